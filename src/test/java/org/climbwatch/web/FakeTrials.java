package org.climbwatch.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.AlarmSettings;

/** Takes orders and runs none: what came in and how it stands is the test's to say. */
public final class FakeTrials implements Trials {
  private final List<TrialOrder> orders = new ArrayList<>();
  private final List<TrialSoFar> trials = new ArrayList<>();
  private int written;

  /** The order that was taken last. */
  public synchronized TrialOrder order() {
    return orders.get(orders.size() - 1);
  }

  /** How often a CSV was fetched. */
  public synchronized int written() {
    return written;
  }

  /** How many orders were taken. */
  public synchronized int taken() {
    return orders.size();
  }

  /** The newest trial has come that far. */
  public synchronized void stand(TrialSoFar.State now, List<TriedFiring> of) {
    TrialSoFar newest = trials.get(trials.size() - 1);
    trials.set(
        trials.size() - 1,
        new TrialSoFar(newest.id(), now, newest.settings(), newest.firings(), 12.34, of));
  }

  /** The daemon has started anew: no trial is there, and their numbers begin again. */
  public synchronized void forget() {
    trials.clear();
  }

  @Override
  public AlarmSettings inForce() {
    return AlarmSettings.DEFAULT;
  }

  @Override
  public synchronized TrialSoFar begin(TrialOrder given) {
    if (!trials.isEmpty() && trials.get(trials.size() - 1).state() == TrialSoFar.State.RUNNING) {
      throw new Refused(409, "A trial is running", "Trial " + trials.size() + " is at it.");
    }
    orders.add(given);
    trials.add(
        new TrialSoFar(
            trials.size() + 1L,
            TrialSoFar.State.RUNNING,
            given.changes().stream()
                .map(change -> given.on(inForce()).of(change.kind().alarm()))
                .toList(),
            2,
            12.34,
            List.of()));
    return trials.get(trials.size() - 1);
  }

  @Override
  public synchronized List<TrialSoFar> kept() {
    List<TrialSoFar> newestFirst = new ArrayList<>(trials);
    Collections.reverse(newestFirst);
    return newestFirst;
  }

  @Override
  public synchronized Optional<TrialSoFar> one(long id) {
    return trials.stream().filter(trial -> trial.id() == id).findFirst();
  }

  @Override
  public synchronized void cancel(long id) {
    if (one(id).orElseThrow().state() == TrialSoFar.State.RUNNING) {
      stand(TrialSoFar.State.CANCELLED, one(id).orElseThrow().results());
    }
  }

  @Override
  public void csv(long id, OutputStream out) throws IOException {
    synchronized (this) {
      written++;
    }
    out.write("firing,name\r\n".getBytes(StandardCharsets.UTF_8));
  }
}
