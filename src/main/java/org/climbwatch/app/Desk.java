package org.climbwatch.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Function;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.web.Backend;
import org.climbwatch.web.CorrectedBy;
import org.climbwatch.web.CurveColumns;
import org.climbwatch.web.EventLine;
import org.climbwatch.web.FiringSummary;
import org.climbwatch.web.Live;
import org.climbwatch.web.Metric;
import org.climbwatch.web.ProbeBudget;
import org.climbwatch.web.ProbeLife;
import org.climbwatch.web.Refused;
import org.climbwatch.web.Status;
import org.climbwatch.web.Trials;

/** What the page asks for, answered from engine and journal. */
final class Desk implements Backend, AutoCloseable {
  private final Engine engine;
  private final Condition condition;
  private final Path journalFile;
  private final TrialDesk trials;

  Desk(Engine engine, Path journalFile) {
    this.engine = engine;
    condition = new Condition(engine);
    this.journalFile = journalFile;
    trials =
        new TrialDesk(engine.configuration().watch(), journalFile, this::refuseWhileTheDiskHangs);
  }

  @Override
  public Status status() {
    return condition.status();
  }

  @Override
  public Instant wallTime(Moment moment) {
    return Instant.ofEpochMilli(engine.wallMillis(moment));
  }

  @Override
  public List<FiringSummary> firings() {
    try (Firings firings = record()) {
      return firings.list().stream().map(Desk::summary).toList();
    }
  }

  @Override
  public Optional<FiringSummary> firing(long id) {
    try (Firings firings = record()) {
      return firings.one(id).map(Desk::summary);
    }
  }

  @Override
  public List<CurveColumns> curves(long id, CorrectedBy by, int points) {
    if (by != CorrectedBy.RECORDED) {
      engine.flush();
    }
    try (Firings firings = record()) {
      requireKnown(firings, id);
      return FiringFiles.curves(firings, id, by, points).stream()
          .map(
              one ->
                  new CurveColumns(
                      one.probe(), one.curve().elapsedMs(), one.curve().temperatureC()))
          .toList();
    }
  }

  @Override
  public void exportCsv(long id, CorrectedBy by, OutputStream out) throws IOException {
    engine.flush();
    try (Firings firings = record()) {
      requireKnown(firings, id);
      FiringFiles.csv(firings, id, by, out);
    }
  }

  @Override
  public Optional<ProbeBudget> budget(String probe) {
    return condition.budget(probe);
  }

  @Override
  public List<EventLine> events(long id) {
    try (Firings firings = record()) {
      requireKnown(firings, id);
      return HistoryLines.of(firings, id);
    }
  }

  @Override
  public synchronized long begin(String name) {
    // one that the disk does not know yet is on, too
    if (engine.view().firing().isPresent()) {
      throw new Refused(
          409, "A firing is on", "End the firing that is on before you begin another.");
    }
    deed(at -> new Input.Began(at, name));
    return engine.openFiringId().orElseThrow();
  }

  @Override
  public void end(long id) {
    if (!doneWhileOn(id, Input.Ended::new)) {
      throw notOn(id);
    }
  }

  @Override
  public void declare(long id, Phase phase) {
    if (!doneWhileOn(id, at -> new Input.Declared(at, phase))) {
      throw notOn(id);
    }
  }

  @Override
  public void note(long id, String text) {
    if (doneWhileOn(id, at -> new Input.Noted(at, text))) {
      return;
    }
    if (firing(id).isEmpty()) {
      throw noFiring(id);
    }
    orRefused(
        () -> {
          engine.remark(id, text);
          return id;
        });
  }

  @Override
  public synchronized void acknowledge(String alarmId, Signature by) {
    Function<Moment, Input> answer = AlarmDesk.acknowledge(engine.view(), alarmId, by);
    // a second press, or a second phone: it is answered already, and the record says so once
    if (!AlarmDesk.answered(engine.view(), alarmId, by)) {
      deed(answer);
    }
  }

  @Override
  public synchronized void shelve(String alarmId, Shelving shelving) {
    deed(AlarmDesk.shelve(engine.view(), alarmId, shelving));
  }

  @Override
  public synchronized void unshelve(String alarmId, Signature by) {
    deed(AlarmDesk.unshelve(engine.view(), alarmId, by));
  }

  @Override
  public synchronized void reset(String alarmId, Signature by) {
    deed(AlarmDesk.reset(engine.view(), alarmId, by));
  }

  @Override
  public List<ProbeLife> probes() {
    refuseWhileTheDiskHangs();
    return ProbeLives.of(engine.configuration(), journalFile);
  }

  @Override
  public Trials trials() {
    return trials;
  }

  @Override
  public Optional<String> unwell() {
    return condition.unwell();
  }

  @Override
  public List<Metric> metrics() {
    Runtime machine = Runtime.getRuntime();
    return List.of(
        Metric.counter(
            "climbwatch_readings", "", "Readings taken since the start.", engine.readings()),
        Metric.gauge(
            "climbwatch_heap_bytes",
            "bytes",
            "Heap in use.",
            machine.totalMemory() - machine.freeMemory()));
  }

  @Override
  public AutoCloseable listen(Consumer<Live> listener) {
    return engine.listen(new LiveWords(this, listener));
  }

  /** Ends the work that goes on beside its requests. */
  @Override
  public void close() {
    trials.close();
  }

  /** Elapsed at a moment of the firing that is on. */
  OptionalDouble elapsedS(Moment at) {
    return engine
        .view()
        .firing()
        .map(f -> OptionalDouble.of((engine.wallMillis(at) - engine.wallMillis(f.since())) / 1e3))
        .orElse(OptionalDouble.empty());
  }

  /** The record to read; while the disk hangs none, for a thread that reads it stays there. */
  private Firings record() {
    refuseWhileTheDiskHangs();
    return Firings.open(journalFile);
  }

  private void refuseWhileTheDiskHangs() {
    if (engine.diskHangs()) {
      throw new Refused(503, "The disk does not answer", engine.trouble().orElse("Try again."));
    }
  }

  private Outcome deed(Function<Moment, Input> make) {
    return orRefused(() -> engine.deed(make));
  }

  private static <T> T orRefused(java.util.function.Supplier<T> work) {
    try {
      return work.get();
    } catch (JournalTrouble trouble) {
      throw new Refused(503, "Not on the disk yet", trouble.getMessage());
    }
  }

  /**
   * Does something to the firing that is on; answers whether it is that one. The record is never
   * read in here: a disk that has just frozen would keep this lock, and no answer came through.
   */
  private synchronized boolean doneWhileOn(long id, Function<Moment, Input> make) {
    OptionalLong open = engine.openFiringId();
    boolean on = open.isPresent() && open.getAsLong() == id;
    if (on) {
      deed(make);
    }
    return on;
  }

  private Refused notOn(long id) {
    return firing(id).isEmpty()
        ? noFiring(id)
        : new Refused(409, "The firing is over", "Firing " + id + " has ended.");
  }

  private static void requireKnown(Firings firings, long id) {
    if (firings.one(id).isEmpty()) {
      throw noFiring(id);
    }
  }

  static Refused noFiring(long id) {
    return new Refused(
        404, "No such firing", "There is no firing " + id + "; GET /api/v1/firings lists them.");
  }

  static FiringSummary summary(org.climbwatch.journal.FiringSummary firing) {
    return new FiringSummary(
        firing.id(),
        firing.name(),
        firing.began(),
        firing.ended(),
        firing.byItself(),
        firing.peakC(),
        (int) firing.alarms());
  }
}
