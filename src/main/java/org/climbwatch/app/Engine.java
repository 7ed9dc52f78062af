package org.climbwatch.app;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Function;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.Journal;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.watch.View;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Brings inputs to the core and what follows from them to the journal, and then to whoever listens.
 *
 * <p>One lock guards core and journal: a reading is taken by the sampling thread, a deed by the
 * thread of its request. Nobody hears of a deed or an alarm before it is on the disk; while the
 * disk is in trouble, they hold and are told all the same.
 */
final class Engine implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Engine.class);

  /** Real ms: a machine that slept so long goes on from now. */
  private static final long SLEPT_MS = 2000;

  private final Configuration configuration;
  private final KilnTime time;
  private final Journal journal;
  private final List<Calibration> calibrations;
  private final Watch watch;
  private final List<Source> sources;
  private final int boot;
  private final WallClock wallClock;
  private final MachineWatch machineWatch;
  private final List<EngineListener> listeners = new CopyOnWriteArrayList<>();
  private final Thread sampler = new Thread(this::sample, "sampler");
  private volatile boolean stopping;
  private volatile long beatAtRealMillis = KilnTime.realMillis();
  private volatile boolean closed;
  private long readings;

  /** Takes up the journal where it ended, and opens the source. */
  Engine(Configuration configuration, KilnTime time, Journal journal) {
    this(configuration, time, journal, MachineWatch.of(configuration.dataDirectory(), time));
  }

  /** The same with its own look at the machine. */
  Engine(Configuration configuration, KilnTime time, Journal journal, MachineWatch machineWatch) {
    this.time = time;
    this.machineWatch = machineWatch;
    this.journal = journal;
    calibrations = journal.calibrations();
    this.configuration =
        configuration.with(Corrections.inForce(configuration.watch(), calibrations));
    journal.knownOffsetMs(time.bootId()).ifPresent(time::goOnFrom);
    // one look at the clock: fast time moves on between two
    long now = time.millis();
    boot = journal.boot(time.bootId(), now, now + time.wallOffsetMillis());
    wallClock = new WallClock(time, journal, boot);
    watch = new Watch(this.configuration.watch());
    resume();
    sources = Sources.open(configuration, originMillis());
  }

  void start() {
    sampler.setUncaughtExceptionHandler(
        (thread, bug) -> LOG.error("the sampler has failed; restart the daemon", bug));
    sampler.start();
  }

  /** Whether the sampler has come round lately: what a watchdog may be told. */
  boolean alive() {
    return KilnTime.realMillis() - beatAtRealMillis < 10_000;
  }

  /**
   * Something the potter does; {@code make} is given the moment. Durable on return; while the disk
   * is in trouble it holds and is told as well, and is written later.
   *
   * @throws JournalTrouble when anything but an answer to an alarm is not on the disk yet
   */
  synchronized Outcome deed(Function<Moment, Input> make) {
    Moment at = now();
    Input input = make.apply(at);
    OptionalLong before = journal.openFiringId();
    Outcome outcome = watch.accept(input);
    Optional<JournalTrouble> waits = Optional.empty();
    try {
      journal.record(input, outcome.events());
    } catch (JournalTrouble trouble) {
      LOG.warn("{}", trouble.getMessage());
      waits = Optional.of(trouble).filter(any -> !(input instanceof Input.Answer));
    }
    listeners.forEach(listener -> listener.deed(input, outcome, firingOf(before)));
    outcome.events().forEach(Engine::log);
    if (waits.isPresent()) {
      throw waits.get();
    }
    return outcome;
  }

  /** A remark on a firing that is over. */
  synchronized void remark(long firingId, String text) {
    journal.remark(firingId, time.millis() + time.wallOffsetMillis(), text);
  }

  synchronized View view() {
    return watch.view();
  }

  synchronized OptionalLong openFiringId() {
    return journal.openFiringId();
  }

  synchronized Optional<String> trouble() {
    return journal.trouble();
  }

  /** Whether the disk has been found hanging, and has not answered since. */
  synchronized boolean diskHangs() {
    return journal.hangs();
  }

  /** Puts what waits on the disk, so that readers see it; trouble shows elsewhere. */
  synchronized void flush() {
    try {
      journal.commit();
    } catch (JournalTrouble trouble) {
      LOG.warn("{}", trouble.getMessage());
    }
  }

  synchronized long readings() {
    return readings;
  }

  /** Milliseconds since 1970 of a moment. */
  synchronized long wallMillis(Moment moment) {
    return wallClock.millis(moment);
  }

  Moment now() {
    return new Moment(boot, time.millis());
  }

  KilnTime time() {
    return time;
  }

  /** With the corrections in force. */
  Configuration configuration() {
    return configuration;
  }

  /** Those recorded up to the start: while the daemon runs, nobody else writes to the journal. */
  List<Calibration> calibrations() {
    return calibrations;
  }

  /** One line on each probe's device, in the order of the probes. */
  List<String> sourceLines() {
    return sources.stream().map(Source::describe).toList();
  }

  AutoCloseable listen(EngineListener listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(sampler);
    try {
      sampler.join(1000);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    closed = true;
    sources.forEach(Source::close);
    synchronized (this) {
      journal.close();
    }
  }

  private void resume() {
    WatchSettings[] inForce = new WatchSettings[1];
    Moment[] last = new Moment[1];
    journal.replay(
        input -> {
          last[0] = input.at();
          if (input instanceof Input.Configured configured) {
            inForce[0] = configured.settings();
          }
          watch.accept(input);
        });
    if (last[0] != null) {
      deed(at -> new Input.Resumed(at, away(last[0], at)));
    }
    if (!configuration.watch().equals(inForce[0])) {
      deed(at -> new Input.Configured(at, configuration.watch()));
    }
    watch
        .view()
        .firing()
        .ifPresent(firing -> LOG.info("goes on with the firing \"{}\"", firing.name()));
  }

  /** How long the machine was off, by the clocks as they are; none where they contradict it. */
  private Duration away(Moment last, Moment at) {
    long offMillis = at.sameBoot(last) ? 0 : wallMillis(at) - wallMillis(last);
    return Duration.ofSeconds(Math.max(0, (offMillis + 999) / 1000));
  }

  /** A model that was in the middle of a firing goes on with it. */
  private long originMillis() {
    return watch
        .view()
        .firing()
        .filter(firing -> firing.since().boot() == boot)
        .map(firing -> firing.since().millis())
        .orElseGet(time::millis);
  }

  private void sample() {
    long intervalMillis = configuration.interval().toMillis();
    long next = time.nextBeat(intervalMillis);
    while (!stopping) {
      long late = time.millis() - next;
      if (late < 0) {
        LockSupport.parkNanos((long) (-late / time.speed() * 1e6));
        continue;
      }
      if (late > SLEPT_MS * time.speed()) {
        next = time.nextBeat(intervalMillis);
        continue;
      }
      take(new Moment(boot, next));
      next += intervalMillis;
    }
  }

  private void take(Moment at) {
    List<Reading> looks = new ArrayList<>(sources.size());
    for (Source source : sources) {
      source.read(at).ifPresent(looks::add);
    }
    beatAtRealMillis = KilnTime.realMillis();
    machineWatch.look(beatAtRealMillis);
    synchronized (this) {
      if (closed) {
        return; // it hung in a device or in the disk: sources and journal are gone
      }
      machineWatch.report(at, watch, journal);
      for (Reading reading : looks) {
        readings++;
        measured(new Input.Measured(reading));
      }
      journal.commitIfDue(beatAtRealMillis);
      wallClock.follow(beatAtRealMillis);
    }
  }

  private void measured(Input.Measured input) {
    OptionalLong before = journal.openFiringId();
    Outcome outcome = watch.accept(input);
    if (!outcome.events().isEmpty()) {
      journal.announce(outcome.judged().orElseThrow(), outcome.events());
      outcome.events().forEach(Engine::log);
    } else if (outcome.kept()) {
      journal.append(outcome.judged().orElseThrow());
    }
    listeners.forEach(listener -> listener.measured(outcome, firingOf(before)));
  }

  /** The firing that is on, or that has just ended. */
  private OptionalLong firingOf(OptionalLong before) {
    OptionalLong now = journal.openFiringId();
    return now.isPresent() ? now : before;
  }

  private static void log(Event event) {
    LOG.info("{} {} {}: {}", event.event(), event.subject(), event.state(), event.message());
  }
}
