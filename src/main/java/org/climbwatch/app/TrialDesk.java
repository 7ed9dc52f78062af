package org.climbwatch.app;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.journal.Firings;
import org.climbwatch.watch.WatchSettings;
import org.climbwatch.web.Refused;
import org.climbwatch.web.TrialOrder;
import org.climbwatch.web.TrialSoFar;
import org.climbwatch.web.Trials;

/**
 * The page's trials of alarm settings: those of {@code replay --firings}, one at a time, each with
 * an end.
 */
final class TrialDesk implements Trials, AutoCloseable {
  /** Twenty long firings on a small computer take less; what takes longer is for another one. */
  private static final Duration LONGEST = Duration.ofMinutes(10);

  /** Within what the whole program has for its end. */
  private static final long STOP_MS = 500;

  private final WatchSettings inForce;
  private final Path journalFile;
  private final Runnable readable;
  private final Duration longest;
  private long lastId;
  private final KeptTrials kept = new KeptTrials();
  private Thread thread = new Thread();

  /**
   * @param readable throws while the record must not be read
   */
  TrialDesk(WatchSettings inForce, Path journalFile, Runnable readable) {
    this(inForce, journalFile, readable, LONGEST);
  }

  TrialDesk(WatchSettings inForce, Path journalFile, Runnable readable, Duration longest) {
    this.inForce = inForce;
    this.journalFile = journalFile;
    this.readable = readable;
    this.longest = longest;
  }

  @Override
  public AlarmSettings inForce() {
    return inForce.alarm();
  }

  @Override
  public TrialSoFar begin(TrialOrder order) {
    refuseSecond();
    readable.run();
    // not under the lock: a disk may take its time
    return begin(order, chosen(order));
  }

  private synchronized TrialSoFar begin(TrialOrder order, List<FiringSummary> firings) {
    refuseSecond();
    AlarmSettings tried = order.on(inForce.alarm());
    order.changes().forEach(change -> refuseContradiction(change.kind(), tried));
    List<RuleSettings> changed =
        order.changes().stream().map(change -> tried.of(change.kind().alarm())).toList();
    FiringTrial trial = new FiringTrial(journalFile, inForce.with(tried));
    TrialWork work = new TrialWork(++lastId, changed, trial, firings, longest);
    kept.add(work);
    thread = new Thread(work, "trial");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
    return work.soFar();
  }

  @Override
  public List<TrialSoFar> kept() {
    List<TrialWork> works;
    synchronized (this) {
      works = kept.all();
    }
    return works.stream().map(TrialWork::soFar).toList();
  }

  @Override
  public Optional<TrialSoFar> one(long id) {
    return work(id).map(TrialWork::soFar);
  }

  @Override
  public void cancel(long id) {
    work(id).ifPresent(TrialWork::cancel);
  }

  @Override
  public void csv(long id, OutputStream out) throws IOException {
    PrintWriter writer = new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    TrialReport.csv(work(id).map(TrialWork::tried).orElse(List.of()), writer);
    writer.flush();
  }

  /** Ends what runs. */
  @Override
  public void close() {
    Thread running;
    synchronized (this) {
      kept.newest().ifPresent(TrialWork::cancel);
      running = thread;
    }
    try {
      running.join(STOP_MS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized Optional<TrialWork> work(long id) {
    return kept.one(id);
  }

  private static void refuseContradiction(RuleKind kind, AlarmSettings tried) {
    kind.contradiction(tried.of(kind.alarm()).numbers())
        .ifPresent(
            why -> {
              throw Refused.badRequest(kind.alarm().word() + ".from_c " + why + ".");
            });
  }

  private synchronized void refuseSecond() {
    kept.newest().filter(TrialWork::running).ifPresent(TrialDesk::refuseBeside);
  }

  private static void refuseBeside(TrialWork running) {
    TrialSoFar trial = running.soFar();
    throw new Refused(
        409,
        "A trial is running",
        "Trial "
            + trial.id()
            + " is at it, "
            + trial.results().size()
            + " of "
            + trial.firings()
            + " firings are done; wait for its end, or cancel it.");
  }

  private List<FiringSummary> chosen(TrialOrder order) {
    try (Firings firings = Firings.open(journalFile)) {
      if (order.last().isPresent()) {
        return newest(firings.list(), order.last().getAsInt());
      }
      List<FiringSummary> chosen = new ArrayList<>();
      for (long id : order.firings()) {
        chosen.add(over(firings.one(id).orElseThrow(() -> Desk.noFiring(id))));
      }
      return chosen;
    }
  }

  private static List<FiringSummary> newest(List<FiringSummary> all, int most) {
    List<FiringSummary> over =
        all.stream().filter(firing -> firing.ended().isPresent()).limit(most).toList();
    if (over.isEmpty()) {
      throw new Refused(
          409, "No past firing", "Settings are tried on firings that are over; there is none yet.");
    }
    return over;
  }

  private static FiringSummary over(FiringSummary firing) {
    if (firing.ended().isEmpty()) {
      throw new Refused(
          409,
          "The firing is on",
          "Firing " + firing.id() + " is not over; settings are tried on firings that are.");
    }
    return firing;
  }
}
