package org.climbwatch.source.simulated;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Looks;
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
  private static final int TICKS_PER_S = 1000 / TICK_MILLIS;

  private final String probe;
  private final SimulationSettings settings;
  private final long originMillis;
  private final long headStartMillis;
  private SimulatedFiring firing;
  private SimulatedProbe sheath;
  private long round;
  private long second;
  private final Reading[] looks = new Reading[TICKS_PER_S];
  private final long[] lookTicks = new long[TICKS_PER_S];

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
    long newest = millis / TICK_MILLIS;
    long oldest = Math.max(newest - settings.looks() + 1, headStartMillis / TICK_MILLIS);
    // noise goes on while the kiln stands still
    long stillTicks = Math.min(Math.floorDiv(at.millis() - originMillis, TICK_MILLIS), 0);
    List<Reading> taken = new ArrayList<>(settings.looks());
    for (long tick = oldest; tick <= newest; tick++) {
      taken.add(look(at, tick, tick + stillTicks));
    }
    return Looks.middle(at, taken);
  }

  /** The look of a tick; kept for a second, since the model never goes back. */
  private Reading look(Moment at, long tick, long noiseTick) {
    int place = (int) Math.floorMod(noiseTick, (long) TICKS_PER_S);
    if (lookTicks[place] != noiseTick) {
      goTo(tick / TICKS_PER_S + 1);
      looks[place] = lookNow(at, tick, noiseTick);
      lookTicks[place] = noiseTick;
    }
    return looks[place];
  }

  private Reading lookNow(Moment at, long tick, long noiseTick) {
    Optional<Fault> fault = SimulatedProbe.fault(firing.faultNow());
    if (fault.isPresent() || sheath.opened(firing, noiseTick)) {
      return Reading.faulty(at, probe, fault.orElse(Fault.OPEN_CIRCUIT));
    }
    double part = tick % TICKS_PER_S / (double) TICKS_PER_S;
    SimulatedProbe.Sent sent = sheath.sent(firing, part, noiseTick);
    return Reading.emf(at, probe, sent.emfMv(), sent.coldJunctionC());
  }

  /** °C that the junction truly had at the last moment asked for, on its whole second. */
  double trueC() {
    return sheath.probeC(0);
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
    Arrays.fill(lookTicks, Long.MIN_VALUE);
    firing = round(settings.fault(), new KilnModel(plan.kiln(), plan.startC()));
    sheath = new SimulatedProbe(settings, plan.startC(), plan.kiln().outsideC());
  }

  private SimulatedFiring round(FaultKind fault, KilnModel kiln) {
    return new SimulatedFiring(settings.firing().plan(round), fault, settings.seed() + round, kiln);
  }

  @Override
  public String describe() {
    return "kiln model, "
        + settings.firing().word()
        + " firing, "
        + settings.place().word()
        + " probe, seed "
        + settings.seed()
        + (settings.fault() == FaultKind.NONE ? "" : ", fault " + settings.fault().word());
  }

  @Override
  public void close() {
    // nothing is held
  }
}
