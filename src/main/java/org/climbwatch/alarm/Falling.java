package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.firing.Phase;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.FallOnset;
import org.climbwatch.signal.HiddenFall;
import org.climbwatch.signal.SteadyFall;

/**
 * The steep fall of a lost flame. Three looks at it: a plain bend, the last 40 s against the line
 * of the minutes before; the bend of the last 80 s, where a slow probe still hides how the kiln
 * falls behind it; and a steep fall as such. Suppressed while idle and cooling; but a standing one
 * goes on until the potter says that the gas is off, or the kiln climbs again: a curve that falls
 * for long cannot tell a shut kiln from a lost flame.
 *
 * <p>At the target a door opened to draw ware looks the same. There a fall is given the three
 * minutes in which the peak is still recent.
 *
 * @param fallCPerHour °C/h, as a positive number, at which a fall is taken seriously
 * @param dropC °C below the recent peak that it must have fallen; half of it where the bend is
 *     plain, twice where it is not
 */
public record Falling(Delays delays, double fallCPerHour, double dropC) implements Rule {
  /** A fibre kiln without flame falls by hundreds of degrees an hour (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.FALLING)
          .number("fall_c_per_h", 120, 10, 5000)
          .number("drop_c", 4, 1, 100)
          .delays(5, 120)
          .makes(
              set -> new Falling(set.delays(), set.number("fall_c_per_h"), set.number("drop_c")));

  /**
   * °C, and noises, that the middle of a minute must have fallen by while single readings are bad.
   * The middle of sixty readings is six times as steady as one of them.
   */
  private static final double LEAST_SURE_C = 15;

  private static final double SURE_NOISES = 1.5;

  /**
   * Standard errors that make a bend plain, and °C that must be missing at its end. Set on the
   * development half of the ensemble of firings: 6 leaves about one false alarm in 600 hours.
   */
  private static final double PLAIN_ERRORS = 6;

  private static final double LEAST_MISSING_C = 1.5;

  /**
   * What makes a bend that a slow probe hides a lost flame: so many times the fall that is taken
   * seriously a minute from now, and that fall itself for sure now; standard errors that make it
   * plain, and that readings may lie beside it; °C that must be missing, and fallen at all; °C
   * above which it finds no lost flame sooner and rings for gusts. Set on 240 lost flames and 6900
   * healthy hours of the ensemble's odd seeds: 17 of those came later than a minute without it and
   * 10 with it, for one false alarm more in 1700 hours.
   */
  private static final double AHEAD_TIMES = 3.5;

  private static final double PLAIN_BEND_ERRORS = 22;
  private static final double LEFT_ERRORS = 2;
  private static final double LEAST_HIDDEN_C = 2.5;
  private static final double LEAST_FALLEN_C = 0.2;
  private static final double HOTTEST_C = 700;

  /** How much deeper a fall must be that is no plain bend. */
  private static final double PLUNGE_TIMES = 2;

  /** Noises that a plunge must be deep: the highest of many readings is itself some noises high. */
  private static final double SURE_DROP_NOISES = 8;

  /** °C short of the target at which ware is drawn. */
  private static final double DRAWING_C = 15;

  /** °C below the cold junction, more than the two may be off. */
  private static final double COLDER_C = 3;

  @Override
  public AlarmKind kind() {
    return AlarmKind.FALLING;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    if (phase == Phase.IDLE) {
      return Verdict.NOT_APPLICABLE;
    }
    if (phase == Phase.COOLING) {
      return situation.stillStands(standing) ? Verdict.HOLDS : Verdict.NOT_APPLICABLE;
    }
    if (belowColdJunction(situation)) {
      return Verdict.CLEAR;
    }
    if (situation.signalBad()) {
      return throughNoise(situation, standing);
    }
    if (situation.quickClimb().isEmpty()
        || situation.temperatureC().isEmpty()
        || situation.recentPeakC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    var climb = situation.quickClimb().get();
    if (standing) {
      return climb.cPerHour() < 0 || hides(situation) ? Verdict.HOLDS : Verdict.CLEAR;
    }
    boolean lost =
        !perhapsDrawing(situation)
            && (bends(situation) || hides(situation) || plunges(situation, climb));
    return lost ? Verdict.HOLDS : Verdict.CLEAR;
  }

  private static boolean perhapsDrawing(Situation situation) {
    return situation.meant().targetC().isPresent()
        && situation.recentPeakC().getAsDouble()
            >= situation.meant().targetC().getAsDouble() - DRAWING_C;
  }

  private boolean bends(Situation situation) {
    if (situation.onset().isEmpty()) {
      return false;
    }
    FallOnset onset = situation.onset().get();
    return onset.nowCPerHour() + onset.nowUncertaintyCPerHour() < -fallCPerHour
        && onset.turnInErrors() > PLAIN_ERRORS
        && onset.missingInErrors() > PLAIN_ERRORS
        && onset.missingC() > LEAST_MISSING_C
        && onset.dropC() > dropC / 2;
  }

  private boolean hides(Situation situation) {
    return hiddenLostFlame(situation).isPresent();
  }

  private Optional<HiddenFall> hiddenLostFlame(Situation situation) {
    return situation.temperatureC().orElse(Double.MAX_VALUE) < HOTTEST_C
        ? situation.onset().flatMap(FallOnset::hidden).filter(this::isLostFlame)
        : Optional.empty();
  }

  private boolean isLostFlame(HiddenFall fall) {
    return fall.aheadCPerHour() < -AHEAD_TIMES * fallCPerHour
        && fall.nowCPerHour() + fall.nowUncertaintyCPerHour() < -fallCPerHour
        && fall.bendInErrors() > PLAIN_BEND_ERRORS
        && fall.leftInErrors() < LEFT_ERRORS
        && fall.missingC() > LEAST_HIDDEN_C
        && fall.dropC() > LEAST_FALLEN_C;
  }

  private boolean plunges(Situation situation, Climb climb) {
    double noiseC = situation.health().noiseC().orElse(0);
    return climb.cPerHour() + climb.uncertaintyCPerHour() < -fallCPerHour
        && dropC(situation) >= Math.max(PLUNGE_TIMES * dropC, SURE_DROP_NOISES * noiseC);
  }

  /** A kiln colder than the amplifier has no heat to lose; its probe may be wired in reverse. */
  private static boolean belowColdJunction(Situation situation) {
    return situation.temperatureC().isPresent()
        && situation.health().coldJunctionC().isPresent()
        && situation.temperatureC().getAsDouble()
            < situation.health().coldJunctionC().getAsDouble() - COLDER_C;
  }

  /** Slower, and sure: the flame may be lost behind a bad signal, too. */
  private Verdict throughNoise(Situation situation, boolean standing) {
    if (situation.health().steadyFall().isEmpty()) {
      return standing ? Verdict.UNKNOWN : Verdict.CLEAR;
    }
    SteadyFall fall = situation.health().steadyFall().get();
    double sureC = Math.max(LEAST_SURE_C, SURE_NOISES * situation.health().noiseC().orElse(0));
    return fall.cPerHour() >= fallCPerHour && fall.dropC() >= sureC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public boolean isSo(Situation situation) {
    return situation.signalBad()
        ? situation.health().steadyFall().isPresent()
        : hides(situation)
            || situation.quickClimb().filter(climb -> climb.cPerHour() < 0).isPresent();
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: falling %s at %s, %s, for %s. THE FLAME MAY BE OUT. Go and look at every"
            + " burner. If one is out: shut the gas at the burner and the bottle, do not relight;"
            + " open damper and door if that is safe, keep flames and switches away, wait 5 min at"
            + " least, longer in still air. Never open the gas blind into a hot kiln. If all burn:"
            + " damper, wind, an opened door, the bottle.",
        situation.kiln(),
        situation.probe(),
        fallPerHour(situation),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature",
        below(situation),
        Words.span(heldSeconds));
  }

  private String below(Situation situation) {
    return hiddenLostFlame(situation)
        .map(fall -> Words.degrees(fall.missingC()) + " below where its climb was leading")
        .orElseGet(
            () -> Words.degrees(dropC(situation)) + " below the highest of the last minutes");
  }

  private String fallPerHour(Situation situation) {
    if (situation.signalBad() && situation.health().steadyFall().isPresent()) {
      return Words.perHour(situation.health().steadyFall().get().cPerHour());
    }
    return hiddenLostFlame(situation)
        .map(HiddenFall::nowCPerHour)
        .or(() -> situation.quickClimb().map(Climb::cPerHour))
        .map(cPerHour -> Words.perHour(-cPerHour))
        .orElse("fast");
  }

  private static double dropC(Situation situation) {
    if (situation.signalBad() && situation.health().steadyFall().isPresent()) {
      return situation.health().steadyFall().get().dropC();
    }
    return situation.recentPeakC().isPresent() && situation.temperatureC().isPresent()
        ? situation.recentPeakC().getAsDouble() - situation.temperatureC().getAsDouble()
        : 0;
  }
}
