package org.climbwatch.app;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.app.trial.Difference;
import org.climbwatch.app.trial.Fired;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.web.TrialSoFar;
import org.climbwatch.web.TriedFiring;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One trial over some firings, on a thread of its own: it takes no lock that a reading needs. */
final class TrialWork implements Runnable {
  private static final Logger LOG = LoggerFactory.getLogger(TrialWork.class);

  private final long id;
  private final List<RuleSettings> changed;
  private final FiringTrial trial;
  private final List<FiringSummary> firings;
  private final long limitNanos;
  private final long beganNanos = System.nanoTime();
  private final Runnable rests = new TrialRests(Runtime.getRuntime().availableProcessors());
  private final List<TrialReport.Tried> tried = new ArrayList<>();
  private final List<TriedFiring> shown = new ArrayList<>();
  private volatile boolean cancelled;
  private TrialSoFar.State state = TrialSoFar.State.RUNNING;
  private long tookNanos;

  /**
   * @param changed settings of the rules that are not as they are in force
   * @param limit after which it ends with what it has
   */
  TrialWork(
      long id,
      List<RuleSettings> changed,
      FiringTrial trial,
      List<FiringSummary> firings,
      Duration limit) {
    this.id = id;
    this.changed = List.copyOf(changed);
    this.trial = trial;
    this.firings = List.copyOf(firings);
    limitNanos = limit.toNanos();
  }

  @Override
  public void run() {
    TrialSoFar.State how = TrialSoFar.State.FAILED;
    try {
      for (FiringSummary firing : firings) {
        add(firing, trial.of(firing, this::goOn));
      }
      how = TrialSoFar.State.DONE;
    } catch (Stopped stopped) {
      how = stopped.how;
    } catch (RuntimeException failed) {
      LOG.error("the trial of other alarm settings failed", failed);
    } finally {
      end(how);
    }
  }

  long id() {
    return id;
  }

  void cancel() {
    cancelled = true;
  }

  synchronized TrialSoFar soFar() {
    long nanos = running() ? System.nanoTime() - beganNanos : tookNanos;
    return new TrialSoFar(id, state, changed, firings.size(), nanos / 1e9, shown);
  }

  synchronized boolean running() {
    return state == TrialSoFar.State.RUNNING;
  }

  synchronized List<TrialReport.Tried> tried() {
    return List.copyOf(tried);
  }

  /** How many it holds. */
  synchronized int alarms() {
    return shown.stream().mapToInt(firing -> firing.alarms().size()).sum();
  }

  private synchronized void add(FiringSummary firing, TrialReport.Tried one) {
    tried.add(one);
    shown.add(
        new TriedFiring(
            Desk.summary(firing), one.differences().stream().map(TrialWork::alarm).toList()));
  }

  private synchronized void end(TrialSoFar.State how) {
    state = how;
    tookNanos = System.nanoTime() - beganNanos;
  }

  private void goOn() {
    rests.run();
    if (cancelled) {
      throw new Stopped(TrialSoFar.State.CANCELLED);
    }
    if (System.nanoTime() - beganNanos > limitNanos) {
      throw new Stopped(TrialSoFar.State.OUT_OF_TIME);
    }
  }

  private static TriedFiring.Alarm alarm(Difference difference) {
    String[] words = difference.alarm().split("-", 2);
    return new TriedFiring.Alarm(
        AlarmKind.ofWord(words[0]),
        words.length > 1 ? Optional.of(words[1]) : Optional.empty(),
        seconds(difference.was()),
        seconds(difference.would()),
        difference.verdict().word(),
        difference.would().or(difference::was).orElseThrow().message());
  }

  private static OptionalDouble seconds(Optional<Fired> fired) {
    return fired.isPresent()
        ? OptionalDouble.of(fired.get().elapsedMs() / 1000.0)
        : OptionalDouble.empty();
  }

  private static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient TrialSoFar.State how;

    Stopped(TrialSoFar.State how) {
      super(null, null, false, false);
      this.how = how;
    }
  }
}
