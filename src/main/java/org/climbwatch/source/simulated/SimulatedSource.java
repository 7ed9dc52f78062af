package org.climbwatch.source.simulated;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;

/** The kiln model in place of a probe. It fires again and again, some hours apart. */
public final class SimulatedSource implements Source {
  /** s from one lighting to the next: firing, cooling, some hours of rest. */
  private static final long CYCLE_S = 24 * 3600;

  private final String probe;
  private final SimulationSettings settings;
  private final long originMillis;
  private long cycle = -1;
  private SimulatedFiring firing;

  /**
   * @param originMillis monotonic milliseconds at which the first firing is lit
   */
  public SimulatedSource(String probe, SimulationSettings settings, long originMillis) {
    this.probe = probe;
    this.settings = settings;
    this.originMillis = originMillis;
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long second = Math.max(at.millis() - originMillis, 0) / 1000;
    advance(second / CYCLE_S, second % CYCLE_S);
    Optional<Fault> fault = firing.fault();
    Reading reading =
        fault.isPresent()
            ? Reading.faulty(at, probe, fault.get())
            : Reading.emf(at, probe, firing.emfMv(), firing.coldJunctionC());
    return Optional.of(reading);
  }

  private void advance(long wantedCycle, long second) {
    if (wantedCycle != cycle || second < firing.second()) {
      firing = new SimulatedFiring(ofCycle(wantedCycle));
      cycle = wantedCycle;
    }
    firing.advanceTo(second);
  }

  /** The first firing is the one asked for; later ones differ, and nothing goes wrong in them. */
  private SimulationSettings ofCycle(long number) {
    if (number == 0) {
      return settings;
    }
    FiringKind kind =
        settings.firing() == FiringKind.DEMO ? FiringKind.FAST_REDUCTION : settings.firing();
    return new SimulationSettings(kind, settings.seed() + number, FaultKind.NONE);
  }

  @Override
  public String describe() {
    return "kiln model, "
        + settings.firing().word()
        + " firing, seed "
        + settings.seed()
        + (settings.fault() == FaultKind.NONE ? "" : ", fault " + settings.fault().word());
  }

  @Override
  public void close() {
    // nothing is held
  }
}
