package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** What holds for every type at every point, by the shape of a thermocouple's function. */
class ConversionPropertiesTest {
  /** °C: the pieces of a published function meet with a step of up to 8e-8 mV, 2e-6 °C. */
  private static final double JOINT_C = 1e-5;

  @Property
  void thereAndBackIsTheSameTemperature(
      @ForAll ThermocoupleType type, @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double part) {
    double t = betweenC(type, part);

    assertThat(type.temperatureC(type.emfMv(t))).isCloseTo(t, within(JOINT_C));
  }

  @Property
  void backAndThereIsTheSameEmf(
      @ForAll ThermocoupleType type, @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double part) {
    double lowest = type.lowestEmfMv();
    double emfMv = lowest + part * (type.highestEmfMv() - lowest);

    assertThat(type.emfMv(type.temperatureC(emfMv))).isCloseTo(emfMv, within(2e-7));
  }

  @Property
  void hotterAlwaysGivesMoreEmf(
      @ForAll ThermocoupleType type,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double one,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double other) {
    double low = betweenC(type, Math.min(one, other));
    double high = betweenC(type, Math.max(one, other));

    if (high - low > JOINT_C) {
      assertThat(type.emfMv(high)).isGreaterThan(type.emfMv(low));
    }
  }

  @Property
  void moreEmfIsNeverColder(
      @ForAll ThermocoupleType type,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double one,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double other) {
    double lowC = type.temperatureC(type.emfMv(betweenC(type, Math.min(one, other))));
    double highC = type.temperatureC(type.emfMv(betweenC(type, Math.max(one, other))));

    assertThat(highC).isGreaterThanOrEqualTo(lowC - JOINT_C);
  }

  /** From just inside the range: the sum of two emfs may end a last bit beside its very end. */
  @Property
  void compensationUndoesTheColdJunction(
      @ForAll ThermocoupleType type,
      @ForAll @DoubleRange(min = 1e-6, max = 1) @Scale(9) double part,
      @ForAll @DoubleRange(min = 0, max = 85) @Scale(6) double coldC) {
    double hotC = betweenC(type, part);
    double emfMv = ColdJunction.emfMv(type, hotC, coldC);

    assertThat(ColdJunction.hotJunctionC(type, emfMv, coldC)).isCloseTo(hotC, within(2 * JOINT_C));
  }

  private static double betweenC(ThermocoupleType type, double part) {
    double lowest = type.lowestInverseC();
    return Math.min(lowest + part * (type.highestC() - lowest), type.highestC());
  }
}
