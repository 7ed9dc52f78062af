package org.climbwatch.source.simulated;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;

/**
 * The kiln model in place of a probe. It fires again and again, with hours of rest between.
 *
 * <p>A reading depends on its moment and on the settings alone, not on which others were asked for.
 */
public final class SimulatedSource implements Source {
  private static final int TICK_MILLIS = 100;

  private final String probe;
  private final SimulationSettings settings;
  private final long originMillis;
  private final long headStartMillis;
  private SimulatedFiring firing;
  private SimulatedProbe sheath;
  private long round;
  private long second;

  /**
   * @param originMillis monotonic milliseconds at which the first firing is lit; before it the kiln
   *     stands still
   */
  public SimulatedSource(String probe, SimulationSettings settings, long originMillis) {
    this.probe = probe;
    this.settings = settings;
    this.originMillis = originMillis;
    headStartMillis = settings.firing().plan(0).headStartMinutes() * 60_000L;
    begin();
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long millis = Math.max(at.millis() - originMillis, 0) + headStartMillis;
    goTo(millis / 1000 + 1);
    Optional<Fault> fault = SimulatedProbe.fault(firing.faultNow());
    Reading reading =
        fault.isPresent()
            ? Reading.faulty(at, probe, fault.get())
            : Reading.emf(at, probe, emfMv(millis), sheath.coldJunctionC());
    return Optional.of(reading);
  }

  /** °C that the junction truly had at the last moment asked for, on its whole second. */
  double trueC() {
    return sheath.probeC(0);
  }

  private double emfMv(long millis) {
    long tick = millis / TICK_MILLIS;
    return sheath.emfMv(firing, tick % 10 / 10.0, tick);
  }

  private void goTo(long wanted) {
    if (wanted < second) {
      begin();
    }
    while (second < wanted) {
      if (firing.second() >= settings.firing().cycle().toSeconds()) {
        round++;
        // the kiln goes on from where the last round left it; nothing goes wrong any more
        firing = round(FaultKind.NONE, firing.model());
      }
      firing.step();
      sheath.step(firing, second);
      second++;
    }
  }

  private void begin() {
    FiringPlan plan = settings.firing().plan(0);
    round = 0;
    second = 0;
    firing = round(settings.fault(), new KilnModel(plan.kiln(), plan.startC()));
    sheath = new SimulatedProbe(settings.seed(), plan.startC(), plan.kiln().outsideC());
  }

  private SimulatedFiring round(FaultKind fault, KilnModel kiln) {
    return new SimulatedFiring(settings.firing().plan(round), fault, settings.seed() + round, kiln);
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
