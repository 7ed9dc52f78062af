package org.climbwatch.source.simulated;

import java.util.Optional;
import org.climbwatch.reading.Fault;

/**
 * One firing of the ensemble, second by second, with its truth: kiln, potter, weather, probe and
 * what goes wrong are drawn from the seed.
 */
public final class EnsembleFiring {
  private static final int STREAM = 100;
  private static final int GUSTS = 108;
  private static final int BLOW = 109;
  private static final int LOOSE = 110;
  private static final double LONGEST_S = 18 * 3600;
  private static final double WAITS_IN_VAIN_S = 90 * 60;
  private static final double AFTER_GAS_OFF_S = 50 * 60;
  private static final double AFTER_FLAME_LOST_S = 12 * 60;

  private final long seed;
  private final Kiln kiln;
  private final KilnModel model;
  private final EnsemblePotter potter;
  private final EnsembleProbe probe;
  private final EnsembleTrouble trouble;
  private final boolean fast;
  private final double targetC;
  private final double gustShare;
  private final double blowShare;
  private final double[] minuteC = new double[(int) (LONGEST_S / 60) + 120];
  private long second;
  private double flame;
  private double blow;
  private double gust;
  private double troubleSinceS = -1;
  private double gasWhenTroubled;
  private double gasOffS = -1;
  private double targetS = -1;
  private double lastClimbS;
  private double doorUntilS = -1;
  private double stuckC;
  private double stuckShownC = Double.NaN;
  private int doors;

  public EnsembleFiring(long seed) {
    this.seed = seed;
    Draw draw = new Draw(seed, STREAM);
    fast = draw.chance(0.4);
    targetC = fast ? draw.between(950, 1050) : draw.between(1180, 1290);
    trouble = EnsembleTrouble.drawn(draw);
    kiln = EnsembleKiln.drawn(seed, fast, targetC, tooSmall());
    double startC = Math.max(kiln.outsideC(), 2);
    model = new KilnModel(kiln, startC);
    potter = new EnsemblePotter(seed, fast, targetC, gasForCPerHour());
    probe = new EnsembleProbe(seed, startC);
    boolean windy = draw.chance(0.2);
    gustShare = windy ? draw.between(0.03, 0.12) : 0.015;
    blowShare = windy ? draw.between(0.05, 0.25) : 0;
  }

  /** Share of the gas that lifts the cold kiln by one °C/h, roughly. */
  private double gasForCPerHour() {
    double wallKg = kiln.liningM2() * kiln.liningM() * kiln.lining().kgPerM3();
    double kjPerK = kiln.wareKg() + kiln.skinKjPerK() + 0.35 * wallKg;
    return kjPerK / 3600 / kiln.burnerKw();
  }

  private boolean tooSmall() {
    return trouble.kind() == EnsembleTrouble.Kind.FIRE_TOO_SMALL;
  }

  public String kind() {
    return trouble.kind().name().toLowerCase(java.util.Locale.ROOT);
  }

  public boolean fast() {
    return fast;
  }

  public double targetC() {
    return targetC;
  }

  public int intervalS() {
    return probe.intervalS;
  }

  public long second() {
    return second;
  }

  public double trueC() {
    return probe.probeC();
  }

  /** s for 63 % of a step, at a temperature. */
  public double probeLagS(double celsius) {
    return probe.lagS(celsius);
  }

  /** When the fault began; negative before. */
  public double troubleSinceS() {
    return troubleSinceS;
  }

  /** When the target was reached; negative before. */
  public double targetS() {
    return targetS;
  }

  public double gasOffS() {
    return gasOffS;
  }

  /** Whether the potter has just now declared the gas off. */
  public boolean gasOffDeclared() {
    return gasOffS == second && potter.gasOffDeclared;
  }

  public boolean holds() {
    return potter.holds();
  }

  public boolean holdDeclared() {
    return potter.holdDeclared;
  }

  public boolean reduces() {
    return potter.burnt(second) < 1;
  }

  /** Why the amplifier gives nothing at this second. */
  public Optional<Fault> fault() {
    return trouble.kind() == EnsembleTrouble.Kind.OPEN_CIRCUIT && sensorTroubled()
        ? Optional.of(Fault.OPEN_CIRCUIT)
        : Optional.empty();
  }

  public double shownC() {
    double shown = probe.shownC(second);
    if (!sensorTroubled()) {
      return shown;
    }
    if (trouble.kind() == EnsembleTrouble.Kind.PROBE_NOISE) {
      return Math.min(shown + 35 * Hash.normal(seed, LOOSE, second), 1370);
    }
    if (trouble.kind() == EnsembleTrouble.Kind.STUCK) {
      if (Double.isNaN(stuckShownC)) {
        stuckShownC = shown;
      }
      return stuckShownC;
    }
    return shown;
  }

  private boolean sensorTroubled() {
    return troubleSinceS >= 0 && second - troubleSinceS < trouble.minutes() * 60;
  }

  /** One second; false when there is nothing more to see. */
  public boolean step() {
    second++;
    startTrouble();
    if (gasOffS < 0) {
      potter.look(second, probe.probeC());
      door();
      endWhenDone();
    }
    weather();
    flame = gasOffS >= 0 ? 0 : gasNow() * potter.burnt(second) * (1 + gust) * (1 - blow);
    boolean open = second < doorUntilS;
    Draught draught = open ? Draught.LID_LIFTED : gasOffS >= 0 ? Draught.SHUT : Draught.OPEN;
    model.step(open ? 0 : kiln.burnerKw() * Math.max(flame, 0), draught);
    probe.step(model.chamberC(), flame, second);
    if (second % 60 == 0) {
      minuteC[(int) (second / 60)] = probe.probeC();
    }
    return !over();
  }

  private void startTrouble() {
    double atC = kiln.outsideC() + trouble.atShare() * (targetC - kiln.outsideC());
    if (troubleSinceS < 0 && trouble.atShare() > 0 && probe.probeC() >= atC) {
      troubleSinceS = second;
      gasWhenTroubled = potter.gas();
    }
  }

  private double gasNow() {
    if (troubleSinceS < 0) {
      return potter.gas();
    }
    double minutes = (second - troubleSinceS) / 60;
    return switch (trouble.kind()) {
      case BOTTLE_FREEZES -> Math.min(potter.gas(), gasWhenTroubled * trouble.bottle(minutes));
      case FLAME_LOST -> 0;
      case ONE_BURNER_OUT -> potter.gas() * trouble.left();
      case HEALTHY, FIRE_TOO_SMALL, OPEN_CIRCUIT, PROBE_NOISE, STUCK -> potter.gas();
    };
  }

  private void weather() {
    // over a minute or so
    gust = 0.98 * gust + 0.2 * gustShare * Hash.normal(seed, GUSTS, second);
    if (blowShare > 0) {
      boolean blows = Hash.even(seed, BLOW, second / 240) < 0.2;
      blow += ((blows ? blowShare : 0) - blow) / 30;
    }
  }

  private void door() {
    boolean again = potter.drawsWare && targetS >= 0 && doors < 4 && second > doorUntilS + 240;
    if (again && probe.probeC() > targetC - 30) {
      doors++;
      doorUntilS = second + 60;
    }
  }

  private void endWhenDone() {
    if (targetS < 0 && probe.probeC() >= targetC) {
      targetS = second;
    }
    double soakS = potter.drawsWare ? 30 * 60 : potter.soakMinutes * 60;
    boolean done = targetS >= 0 && second >= targetS + soakS;
    if (climbsWell() || potter.holds() || potter.dryingNow() || targetS >= 0) {
      lastClimbS = second;
    }
    if (done || second - lastClimbS > WAITS_IN_VAIN_S || second > LONGEST_S) {
      gasOffS = second;
    }
  }

  private boolean climbsWell() {
    int minute = (int) (second / 60) - 1;
    return minute < 15 || minuteC[minute] - minuteC[minute - 10] > 20.0 / 6;
  }

  private boolean over() {
    boolean lost = trouble.kind() == EnsembleTrouble.Kind.FLAME_LOST && troubleSinceS >= 0;
    return gasOffS >= 0 && second > gasOffS + AFTER_GAS_OFF_S
        || lost && second > troubleSinceS + AFTER_FLAME_LOST_S;
  }

  /**
   * After the firing: the second from which the true climb stayed under a rate, taken over ten
   * minutes, until the gas was shut, and well short of the target; negative when it did not.
   */
  public double stallS(double leastCPerHour, double shortOfTargetC) {
    if (gasOffS < 0 || targetS >= 0) {
      return -1;
    }
    int end = (int) (gasOffS / 60) - 1;
    int minute = end;
    while (minute > 10 && minuteC[minute] - minuteC[minute - 10] < leastCPerHour / 6) {
      minute--;
    }
    boolean longEnough = end - minute >= 30;
    boolean farBelow = minuteC[end] < targetC - shortOfTargetC;
    return longEnough && farBelow ? (minute - 4) * 60.0 : -1;
  }

  /** Where this fire would go if nothing were changed any more. */
  public KilnModel onwards() {
    return model.copy();
  }

  double flameKw() {
    return kiln.burnerKw() * flame;
  }

  /**
   * Where the fire goes if it burns on as it does: °C once the climb falls under a rate, and
   * seconds to the target, infinite when it is never reached.
   */
  public double[] fate(double leastCPerHour) {
    KilnModel on = model.copy();
    double kw = kiln.burnerKw() * Math.max(potterFlame(), 0);
    double arrivalS = Double.POSITIVE_INFINITY;
    double before = on.chamberC();
    for (int s = 1; s <= 12 * 3600; s++) {
      on.step(kw, Draught.OPEN);
      if (Double.isInfinite(arrivalS) && on.chamberC() >= targetC) {
        arrivalS = s;
      }
      if (s % 600 == 0) {
        if (Math.abs(on.chamberC() - before) < leastCPerHour / 6) {
          break;
        }
        before = on.chamberC();
      }
    }
    return new double[] {on.chamberC(), arrivalS};
  }

  private double potterFlame() {
    return gasOffS >= 0 ? 0 : gasNow() * potter.burnt(second) * (1 - blow);
  }
}
