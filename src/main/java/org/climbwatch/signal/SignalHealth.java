package org.climbwatch.signal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a run of readings says about probe, lead and amplifier rather than about the kiln.
 *
 * @param noiseC °C, standard: how much it shivers from one reading to the next
 * @param lookSpreadC °C, standard: how much the looks scatter that one reading is the middle of;
 *     empty where a reading is a single look
 * @param jumps how many steps and faults that came and went, in the last quarter of an hour
 * @param jumpsComeAndGo whether it went up and down among them
 * @param largestJumpC °C, without its sign; 0 where there were only faults
 * @param leapC °C of the step by which the signal has left what a kiln can do; empty while it has
 *     not, or is back
 * @param unmovedS s for which the signal has not moved by a single bit
 * @param finestStepC °C, the smallest move seen so far; infinite before the first
 * @param coldJunctionC °C of the amplifier's terminals, where it tells
 * @param coldJunctionCPerMinute °C/min over the last five minutes
 * @param restOffsetC °C, probe less cold junction, while both have lain still for three hours
 * @param reversal what it is like below the cold junction, where nothing proves the wires right
 * @param middleC °C, the middle one of the last full minute
 * @param steadyFall a fall that shows through noise and jumps
 */
public record SignalHealth(
    OptionalDouble noiseC,
    OptionalDouble lookSpreadC,
    int jumps,
    boolean jumpsComeAndGo,
    double largestJumpC,
    OptionalDouble leapC,
    double unmovedS,
    double finestStepC,
    OptionalDouble coldJunctionC,
    OptionalDouble coldJunctionCPerMinute,
    OptionalDouble restOffsetC,
    Optional<Reversal> reversal,
    OptionalDouble middleC,
    Optional<SteadyFall> steadyFall) {
  /** Nothing is known yet. */
  public static final SignalHealth UNKNOWN =
      new SignalHealth(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          0,
          false,
          0,
          OptionalDouble.empty(),
          0,
          Double.POSITIVE_INFINITY,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          OptionalDouble.empty(),
          Optional.empty());

  /** The same for one who does not ask for leaps. */
  public SignalHealth withoutLeap() {
    return new SignalHealth(
        noiseC,
        lookSpreadC,
        jumps,
        jumpsComeAndGo,
        largestJumpC,
        OptionalDouble.empty(),
        unmovedS,
        finestStepC,
        coldJunctionC,
        coldJunctionCPerMinute,
        restOffsetC,
        reversal,
        middleC,
        steadyFall);
  }
}
