package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.climbwatch.thermocouple.Correction.Point;
import org.junit.jupiter.api.Test;

class CorrectionTest {
  private static final Correction TWO =
      new Correction(List.of(new Point(100, -1, 0.4), new Point(900, -5, 3.2)));

  @Test
  void withoutPointsNothingIsAddedAndNothingIsKnown() {
    for (double t = -200; t < 1400; t += 17) {
      assertThat(Correction.NONE.addC(t)).isZero();
      assertThat(Correction.NONE.expandedC(t)).isZero();
      assertThat(Correction.NONE.shareUnknown(t)).isEqualTo(1);
    }
    assertThat(Correction.NONE.isNone()).isTrue();
  }

  @Test
  void betweenPointsItGoesInAStraightLine() {
    assertThat(TWO.addC(100)).isEqualTo(-1);
    assertThat(TWO.addC(900)).isEqualTo(-5);
    assertThat(TWO.addC(300)).isCloseTo(-2, within(1e-12));
    assertThat(TWO.expandedC(300)).isCloseTo(1.1, within(1e-12));
  }

  @Test
  void outsideItKeepsTheNearestPoint() {
    assertThat(TWO.addC(20)).isEqualTo(-1);
    assertThat(TWO.addC(1300)).isEqualTo(-5);
    assertThat(TWO.expandedC(1300)).isEqualTo(3.2);
  }

  @Test
  void pointSettlesTheLimitsAndDistanceBringsThemBack() {
    assertThat(TWO.shareUnknown(900)).isZero();
    assertThat(TWO.shareUnknown(1000)).isCloseTo(0.1, within(1e-12));
    assertThat(TWO.shareUnknown(500)).isCloseTo(0.8, within(1e-12));
    // below 333 °C the limit of class 2 does not fall with the temperature
    assertThat(TWO.shareUnknown(20)).isCloseTo(80 / 333.0, within(1e-12));
  }

  @Test
  void onePointIsAConstant() {
    Correction ice = new Correction(List.of(new Point(0.4, -0.4, 0.2)));

    assertThat(ice.addC(-50)).isEqualTo(-0.4);
    assertThat(ice.addC(1250)).isEqualTo(-0.4);
    assertThat(ice.shareUnknown(1250)).isGreaterThan(0.99);
  }

  @Test
  void pointsThatDoNotRiseAreRefused() {
    Point at100 = new Point(100, 0, 1);
    assertThatThrownBy(() -> new Correction(List.of(at100, new Point(100, 1, 1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("100.0 and 100.0 °C do not rise");
    assertThatThrownBy(() -> new Correction(List.of(new Point(200, 0, 1), at100)))
        .hasMessageContaining("do not rise");
    // 100 stays 100, but 110 would become 95
    assertThatThrownBy(() -> new Correction(List.of(at100, new Point(110, -15, 1))))
        .hasMessageContaining("take points further apart, or merge them");
  }

  @Test
  void absurdPointsAreRefused() {
    assertThatThrownBy(() -> new Point(Double.NaN, 0, 1)).hasMessageContaining("-270 to 1820");
    assertThatThrownBy(() -> new Point(1000, 101, 1)).hasMessageContaining("replace a couple");
    assertThatThrownBy(() -> new Point(1000, 0, -1)).hasMessageContaining("0 to 100");
    assertThatThrownBy(() -> new Point(1000, Double.NaN, 1)).hasMessageContaining("out of range");
  }

  @Property
  void whatReadsHotterIsHotterAfterTheCorrection(
      @ForAll("corrections") Correction correction,
      @ForAll @DoubleRange(min = -200, max = 1372) double one,
      @ForAll @DoubleRange(min = -200, max = 1372) double other) {
    double low = Math.min(one, other);
    double high = Math.max(one, other);

    assertThat(high + correction.addC(high))
        .isGreaterThanOrEqualTo(low + correction.addC(low) - 1e-9);
  }

  @Property
  void correctionStaysBetweenWhatWasFoundAtThePoints(
      @ForAll("corrections") Correction correction,
      @ForAll @DoubleRange(min = -200, max = 1372) double readC) {
    double least = correction.points().stream().mapToDouble(Point::addC).min().orElse(0);
    double most = correction.points().stream().mapToDouble(Point::addC).max().orElse(0);

    assertThat(correction.addC(readC)).isBetween(least - 1e-9, most + 1e-9);
    assertThat(correction.shareUnknown(readC)).isBetween(0.0, 1.0);
  }

  @Provide
  Arbitrary<Correction> corrections() {
    return Combinators.combine(
            Arbitraries.doubles().between(-40, 40), Arbitraries.doubles().between(0, 20))
        .as(List::of)
        .list()
        .ofMaxSize(6)
        .map(CorrectionTest::hundredApart);
  }

  /** So that corrections of up to 40 °C cannot turn two readings around. */
  private static Correction hundredApart(List<List<Double>> pairs) {
    List<Point> points = new ArrayList<>();
    for (List<Double> pair : pairs) {
      points.add(new Point(150.0 * points.size(), pair.get(0), pair.get(1)));
    }
    return new Correction(points);
  }
}
