package org.climbwatch.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.AlarmSettings;

/** Takes orders and runs none: what came in and how it stands is the test's to say. */
final class FakeTrials implements Trials {
  private Optional<TrialOrder> order = Optional.empty();
  private TrialSoFar.State state = TrialSoFar.State.RUNNING;
  private List<TriedFiring> results = List.of();

  synchronized TrialOrder order() {
    return order.orElseThrow();
  }

  synchronized void stand(TrialSoFar.State now, List<TriedFiring> of) {
    state = now;
    results = of;
  }

  @Override
  public AlarmSettings inForce() {
    return AlarmSettings.DEFAULT;
  }

  @Override
  public synchronized TrialSoFar begin(TrialOrder given) {
    if (order.isPresent() && state == TrialSoFar.State.RUNNING) {
      throw new Refused(409, "A trial is running", "Trial 1 is at it.");
    }
    order = Optional.of(given);
    return one(1).orElseThrow();
  }

  @Override
  public synchronized Optional<TrialSoFar> one(long id) {
    return order
        .filter(any -> id == 1)
        .map(
            given ->
                new TrialSoFar(
                    1,
                    state,
                    given.changes().stream()
                        .map(change -> given.on(inForce()).of(change.kind().alarm()))
                        .toList(),
                    2,
                    12.34,
                    results));
  }

  @Override
  public synchronized void cancel(long id) {
    state = TrialSoFar.State.CANCELLED;
  }

  @Override
  public void csv(long id, OutputStream out) throws IOException {
    out.write("firing,name\r\n".getBytes(StandardCharsets.UTF_8));
  }
}
