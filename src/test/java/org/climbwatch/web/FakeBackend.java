package org.climbwatch.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.Forecast;
import org.climbwatch.thermocouple.Budget;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.View;

/** A small daemon that a test leads by the hand. Refuses whatever a real one would refuse. */
public final class FakeBackend implements Backend {
  public static final Instant START = Instant.parse("2026-11-21T07:12:00Z");
  private final FakeTrials trials = new FakeTrials();
  private static final String PROBE = "top";

  private final List<Consumer<Live>> listeners = new CopyOnWriteArrayList<>();
  private final Map<Long, FiringSummary> firings = new TreeMap<>();
  private final Map<Long, List<EventLine>> histories = new TreeMap<>();
  private final Map<Long, CurveColumns> curves = new TreeMap<>();
  private final List<View.StandingAlarm> alarms = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();
  private Optional<Judged> latest = Optional.empty();
  private Optional<View.OpenFiring> open = Optional.empty();
  private OptionalLong openId = OptionalLong.empty();
  private Phase phase = Phase.IDLE;
  private OptionalDouble latestAgeS = OptionalDouble.empty();
  private OptionalDouble targetC = OptionalDouble.empty();
  private Forecast forecast = new Forecast.NotYet(Forecast.Reason.NOT_CLIMBING);
  private Optional<String> unwell = Optional.empty();
  private Optional<RuntimeException> bug = Optional.empty();
  private Optional<String> noNotes = Optional.empty();
  private final List<View.WatchedAlarm> watched = new ArrayList<>();
  private Optional<String> second = Optional.empty();
  private boolean flood;
  private boolean brokenExport;
  private Optional<Instant> checked = Optional.empty();
  private long nowMs;

  // ---- what the test does ----

  /** Lets time pass. */
  public synchronized void elapse(long ms) {
    nowMs += ms;
  }

  public synchronized void notice(String text) {
    notices.add(text);
  }

  public synchronized void target(double celsius) {
    targetC = OptionalDouble.of(celsius);
  }

  public synchronized void foresee(Forecast other) {
    forecast = other;
  }

  public synchronized void breakWith(RuntimeException exception) {
    bug = Optional.of(exception);
  }

  public synchronized void refuseNotes(String detail) {
    noNotes = Optional.of(detail);
  }

  public synchronized void breakExport() {
    brokenExport = true;
  }

  public synchronized void sicken(String reason) {
    unwell = Optional.of(reason);
  }

  public synchronized void check(Instant at) {
    checked = Optional.of(at);
  }

  public synchronized void age(double seconds) {
    latestAgeS = OptionalDouble.of(seconds);
  }

  /** A good reading arrives. */
  public void measure(double temperatureC, double climbCPerHour) {
    Live live;
    synchronized (this) {
      Reading reading = Reading.emf(now(), PROBE, temperatureC * 0.041, 24.5, 9, 0.0104);
      latest =
          Optional.of(
              new Judged(
                  reading,
                  OptionalDouble.of(temperatureC),
                  OptionalDouble.of(2.0 + temperatureC * 0.004),
                  Optional.empty(),
                  false,
                  Optional.of(new Climb(climbCPerHour, 6.4)),
                  phase,
                  OptionalDouble.of(0.25)));
      live = arrived();
    }
    tell(live);
  }

  /** A reading without a temperature arrives. */
  public void fail(Fault fault) {
    Live live;
    synchronized (this) {
      latest =
          Optional.of(
              new Judged(
                  Reading.faulty(now(), PROBE, fault),
                  OptionalDouble.empty(),
                  OptionalDouble.empty(),
                  Optional.of(fault),
                  false,
                  Optional.empty(),
                  phase));
      live = arrived();
    }
    tell(live);
  }

  private Live arrived() {
    latestAgeS = OptionalDouble.of(0.2);
    return new Live.NewReading(wallTime(now()), openId, elapsedS(), latest.orElseThrow());
  }

  /** There is another probe, which has not read yet. */
  public synchronized void second(String probe) {
    second = Optional.of(probe);
  }

  /** An alarm of the followed probe is raised. */
  public void raise(String id, AlarmKind kind, String message) {
    raise(id, PROBE, kind, message);
  }

  /** An alarm is raised. */
  public void raise(String id, String probe, AlarmKind kind, String message) {
    EventLine line;
    synchronized (this) {
      alarms.add(
          new View.StandingAlarm(id, probe, kind, AlarmState.UNACKNOWLEDGED, now(), message));
      line = happened("alarm", kind.word(), "unacknowledged", message);
    }
    tell(new Live.Happened(openId, line));
  }

  /** An alarm is said again because nobody has answered. */
  public void remind(AlarmKind kind, String message) {
    EventLine line;
    synchronized (this) {
      line = happened("reminder", kind.word(), "unacknowledged", message);
    }
    tell(new Live.Happened(openId, line));
  }

  /** Alarms come in a flood, this one first. */
  public synchronized void flood(String firstId) {
    flood = true;
    alarms.replaceAll(
        one ->
            new View.StandingAlarm(
                one.id(),
                one.probe(),
                one.kind(),
                one.state(),
                one.since(),
                one.message(),
                one.seenAt(),
                one.shelvedUntil(),
                one.by(),
                one.id().equals(firstId)));
  }

  /** An alarm's cause is seen again. */
  public synchronized void see(String id) {
    alarms.replaceAll(
        one ->
            one.id().equals(id)
                ? new View.StandingAlarm(
                    one.id(),
                    one.probe(),
                    one.kind(),
                    one.state(),
                    one.since(),
                    one.message(),
                    now(),
                    one.shelvedUntil(),
                    one.by(),
                    one.cameFirst())
                : one);
  }

  /** An alarm that does not look now. */
  public synchronized void unwatched(AlarmKind kind, AlarmState state) {
    watched.add(new View.WatchedAlarm(kind.word(), PROBE, kind, state));
  }

  /** A recorded firing of the past. */
  public synchronized void remember(FiringSummary firing, CurveColumns curve) {
    firings.put(firing.id(), firing);
    curves.put(firing.id(), curve);
    histories.put(firing.id(), new ArrayList<>());
  }

  /** Puts the curve so far under the firing that is on, and the clock to its end. */
  public synchronized void drawn(CurveColumns curve) {
    curves.put(openId.orElseThrow(), curve);
    nowMs = open.orElseThrow().since().millis() + curve.elapsedMs()[curve.elapsedMs().length - 1];
  }

  /** Puts a line into the history of the firing that is on. */
  public synchronized void wrote(
      long elapsedMs, String kind, String subject, String state, String text) {
    Instant time = START.plusMillis(open.orElseThrow().since().millis() + elapsedMs);
    histories
        .get(openId.orElseThrow())
        .add(
            new EventLine(time, OptionalDouble.of(elapsedMs / 1000.0), kind, subject, state, text));
  }

  public void tell(Live live) {
    listeners.forEach(listener -> listener.accept(live));
  }

  public synchronized List<EventLine> historyOf(long id) {
    return List.copyOf(histories.getOrDefault(id, List.of()));
  }

  public int listeners() {
    return listeners.size();
  }

  public synchronized Phase phase() {
    return phase;
  }

  // ---- what the web asks ----

  @Override
  public synchronized Status status() {
    bug.ifPresent(
        exception -> {
          throw exception;
        });
    return new Status(
        wallTime(now()),
        new View(
            "Meadow Lane top-hat",
            phase,
            targetC,
            Stream.concat(
                    Stream.of(new View.ProbeView(PROBE, latest)),
                    second.stream().map(name -> new View.ProbeView(name, Optional.empty())))
                .toList(),
            open,
            forecast,
            List.copyOf(alarms),
            List.copyOf(watched),
            flood),
        Stream.concat(
                Stream.of(new Status.Device(PROBE, "kiln model, seed 7", latestAgeS, checked)),
                second.stream()
                    .map(
                        name ->
                            new Status.Device(
                                name, "kiln model, seed 8", OptionalDouble.empty(), checked)))
            .toList(),
        10,
        openId,
        elapsedS(),
        notices);
  }

  @Override
  public Instant wallTime(Moment moment) {
    return START.plusMillis(moment.millis());
  }

  @Override
  public synchronized List<FiringSummary> firings() {
    List<FiringSummary> newestFirst = new ArrayList<>(firings.values());
    Collections.reverse(newestFirst);
    return newestFirst;
  }

  @Override
  public synchronized Optional<FiringSummary> firing(long id) {
    return Optional.ofNullable(firings.get(id));
  }

  @Override
  public synchronized List<CurveColumns> curves(long id, CorrectedBy by, int points) {
    CurveColumns whole = curves.get(known(id).id());
    if (whole == null) {
      return List.of(new CurveColumns(PROBE, new long[0], new double[0]));
    }
    int step = Math.max(1, (int) Math.ceil(whole.elapsedMs().length / (double) points));
    int length = (whole.elapsedMs().length + step - 1) / step;
    long[] elapsedMs = new long[length];
    double[] temperatureC = new double[length];
    for (int i = 0; i < length; i++) {
      elapsedMs[i] = whole.elapsedMs()[i * step];
      temperatureC[i] = whole.temperatureC()[i * step];
    }
    return List.of(new CurveColumns(PROBE, elapsedMs, temperatureC));
  }

  @Override
  public void exportCsv(long id, CorrectedBy by, OutputStream out) throws IOException {
    known(id);
    out.write("time,elapsed_s,probe,temperature_c\r\n".getBytes(StandardCharsets.UTF_8));
    for (int i = 0; i < 20_000; i++) {
      if (brokenExport && i == 15_000) {
        throw new IllegalStateException("the journal went away");
      }
      String row = START.plusSeconds(i) + "," + i + ",top," + (20 + i * 0.05) + "\r\n";
      out.write(row.getBytes(StandardCharsets.UTF_8));
    }
  }

  @Override
  public synchronized Optional<ProbeBudget> budget(String probe) {
    MeasuringChain chain =
        new MeasuringChain(ThermocoupleType.K, ToleranceClass.IEC_2, ProbeErrors.inDegrees(2, 2));
    return Optional.of(probe)
        .filter(PROBE::equals)
        .map(
            name ->
                new ProbeBudget(
                    name,
                    latest
                        .flatMap(judged -> judged.temperatureC().stream().boxed().findFirst())
                        .map(readC -> Budget.of(chain, readC, 24.5, 0.25, 9)),
                    checked,
                    checked.isPresent() ? "Ann: ice point: read 0.4 °C" : ""));
  }

  @Override
  public synchronized List<EventLine> events(long id) {
    return historyOf(known(id).id());
  }

  @Override
  public long begin(String name) {
    EventLine line;
    synchronized (this) {
      if (open.isPresent()) {
        throw new Refused(409, "A firing is on", "End firing " + openId.getAsLong() + " first.");
      }
      long id = firings.size() + 1L;
      openId = OptionalLong.of(id);
      open = Optional.of(new View.OpenFiring(now(), name, false, false));
      phase = Phase.DRYING;
      firings.put(
          id,
          new FiringSummary(
              id, name, wallTime(now()), Optional.empty(), false, OptionalDouble.empty(), 0));
      histories.put(id, new ArrayList<>());
      line = happened("firing", name, "began", "Firing begun by the potter.");
    }
    tell(new Live.Happened(openId, line));
    return openId.getAsLong();
  }

  @Override
  public void end(long id) {
    EventLine line;
    synchronized (this) {
      FiringSummary firing = running(id);
      line = happened("firing", firing.name(), "ended", "Firing ended by the potter.");
      firings.put(
          id,
          new FiringSummary(
              id,
              firing.name(),
              firing.began(),
              Optional.of(wallTime(now())),
              firing.byItself(),
              OptionalDouble.of(1004.5),
              alarms.size()));
      open = Optional.empty();
      openId = OptionalLong.empty();
      phase = Phase.IDLE;
    }
    tell(new Live.Happened(OptionalLong.of(id), line));
  }

  @Override
  public void declare(long id, Phase declared) {
    EventLine line;
    synchronized (this) {
      running(id);
      phase = declared;
      View.OpenFiring now = open.orElseThrow();
      open =
          Optional.of(
              new View.OpenFiring(
                  now.since(), now.name(), now.byItself(), declared == Phase.COOLING));
      line = happened("phase", declared.word(), "entered", declared.title() + ", as declared.");
    }
    tell(new Live.Happened(openId, line));
  }

  @Override
  public void note(long id, String text) {
    EventLine line;
    synchronized (this) {
      known(id);
      noNotes.ifPresent(
          detail -> {
            throw new Refused(503, "Not stored", detail);
          });
      line = new EventLine(wallTime(now()), elapsedS(), EventLine.NOTE, "", "", text);
      histories.get(id).add(line);
    }
    tell(new Live.Happened(openId, line));
  }

  @Override
  public void acknowledge(String alarmId, Signature by) {
    change(alarmId, AlarmState.ACKNOWLEDGED, Optional.empty(), by);
  }

  @Override
  public void shelve(String alarmId, Shelving shelving) {
    Moment until = new Moment(0, nowMs + shelving.time().toMillis());
    change(alarmId, AlarmState.SHELVED, Optional.of(until), shelving.by());
  }

  @Override
  public void unshelve(String alarmId, Signature by) {
    change(alarmId, AlarmState.UNACKNOWLEDGED, Optional.empty(), Signature.NOBODY);
  }

  @Override
  public void reset(String alarmId, Signature by) {
    change(alarmId, AlarmState.NORMAL, Optional.empty(), by);
  }

  /** An alarm is in another state, by the potter or by itself. */
  public void change(
      String alarmId, AlarmState state, Optional<Moment> shelvedUntil, Signature by) {
    EventLine line;
    synchronized (this) {
      View.StandingAlarm alarm =
          alarms.stream()
              .filter(standing -> standing.id().equals(alarmId))
              .findFirst()
              .orElseThrow(
                  () -> new Refused(404, "No such alarm", "No alarm " + alarmId + " stands now."));
      View.StandingAlarm changed =
          new View.StandingAlarm(
              alarm.id(),
              alarm.probe(),
              alarm.kind(),
              state,
              alarm.since(),
              alarm.message(),
              alarm.seenAt(),
              shelvedUntil,
              by,
              alarm.cameFirst());
      if (state == AlarmState.NORMAL) {
        alarms.remove(alarm);
      } else {
        alarms.set(alarms.indexOf(alarm), changed);
      }
      line = happened("alarm", alarm.kind().word(), state.word(), alarm.message());
    }
    tell(new Live.Happened(openId, line));
  }

  @Override
  public List<ProbeLife> probes() {
    return List.of(
        new ProbeLife(
            PROBE,
            "K",
            Optional.of(LocalDate.of(2026, 10, 1)),
            52,
            51,
            208.25,
            120.5,
            61,
            20.75,
            Optional.of("It reads 40 °C lower beside probe lower than it used to."),
            "soon",
            "Have a new one ready."));
  }

  @Override
  public FakeTrials trials() {
    return trials;
  }

  @Override
  public synchronized Optional<String> unwell() {
    return unwell;
  }

  @Override
  public List<Metric> metrics() {
    return List.of(
        Metric.counter("climbwatch_readings", "", "Readings taken in.", 7_301),
        new Metric(
            "climbwatch_disk_written_bytes",
            Metric.Kind.COUNTER,
            "bytes",
            "Written to \"disk\" \\ card,\nsince the start.",
            List.of(new Metric.Sample(Map.of("file", "a\"b\\c\nd"), 12.5))));
  }

  @Override
  public AutoCloseable listen(Consumer<Live> listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  private Moment now() {
    return new Moment(0, nowMs);
  }

  private OptionalDouble elapsedS() {
    return open.isPresent()
        ? OptionalDouble.of(now().millisSince(open.get().since()) / 1000.0)
        : OptionalDouble.empty();
  }

  private EventLine happened(String kind, String subject, String state, String text) {
    EventLine line = new EventLine(wallTime(now()), elapsedS(), kind, subject, state, text);
    openId.ifPresent(id -> histories.get(id).add(line));
    return line;
  }

  private FiringSummary known(long id) {
    return firing(id).orElseThrow(() -> Refused.noFiring(Long.toString(id)));
  }

  private FiringSummary running(long id) {
    FiringSummary firing = known(id);
    if (openId.isEmpty() || openId.getAsLong() != id) {
      throw new Refused(409, "Firing is over", "Firing " + id + " has ended already.");
    }
    return firing;
  }
}
