package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CoefficientFileTest {
  private static final int STEPS = 20_000;

  /** NIST SRD 60 prints 161 forward, 3 exponential and 188 inverse coefficients, zeros left out. */
  @Test
  void everyPrintedCoefficientIsRead() {
    assertThat(count("forward")).isEqualTo(161);
    assertThat(count("forward_exponential")).isEqualTo(3);
    assertThat(count("inverse")).isEqualTo(188);
  }

  @ParameterizedTest
  @EnumSource
  void neighbouringForwardPiecesMeet(ThermocoupleType type) {
    List<Polynomial> pieces = CoefficientFile.polynomials(CoefficientFile.text(), type, "forward");
    double range = pieces.get(0).highest();

    for (int i = 1; i < pieces.size(); i++) {
      assertThat(pieces.get(i).lowest()).isEqualTo(range);
      // the lower piece serves the joint itself; a hair above it the upper one does
      assertThat(type.emfMv(Math.nextUp(range))).isCloseTo(type.emfMv(range), within(8e-8));
      range = pieces.get(i).highest();
    }
    assertThat(range).isEqualTo(type.highestC());
  }

  /**
   * NIST SRD 60, error of each inverse polynomial as printed, °C. The print is rounded: the true
   * extreme passes it by up to 0.0032 °C. A wrong digit in a forward or an inverse coefficient
   * breaks this.
   */
  @ParameterizedTest
  @CsvSource({
    "B, 250, 700, -0.02, 0.03",
    "B, 700, 1820, -0.01, 0.02",
    "E, -200, 0, -0.01, 0.03",
    "E, 0, 1000, -0.02, 0.02",
    "J, -210, 0, -0.05, 0.03",
    "J, 0, 760, -0.04, 0.04",
    "J, 760, 1200, -0.04, 0.03",
    "K, -200, 0, -0.02, 0.04",
    "K, 0, 500, -0.05, 0.04",
    "K, 500, 1372, -0.05, 0.06",
    "N, -200, 0, -0.02, 0.03",
    "N, 0, 600, -0.02, 0.03",
    "N, 600, 1300, -0.04, 0.02",
    "R, -50, 250, -0.02, 0.02",
    "R, 250, 1200, -0.005, 0.005",
    "R, 1064, 1664.5, -0.0005, 0.001",
    "R, 1664.5, 1768.1, -0.001, 0.002",
    "S, -50, 250, -0.02, 0.02",
    "S, 250, 1200, -0.01, 0.01",
    "S, 1064, 1664.5, -0.0002, 0.0002",
    "S, 1664.5, 1768.1, -0.002, 0.002",
    "T, -200, 0, -0.02, 0.04",
    "T, 0, 400, -0.03, 0.03"
  })
  void publishedInverseErrsAsPublished(
      ThermocoupleType type, double lowC, double highC, double leastC, double mostC) {
    Polynomial inverse = inverseOver(type, lowC, highC);
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= STEPS; i++) {
      double t = lowC + (highC - lowC) * i / STEPS;
      double error = inverse.value(type.emfMv(t)) - t;
      least = Math.min(least, error);
      most = Math.max(most, error);
    }

    assertThat(least).isBetween(leastC - 0.0032, 0.0);
    assertThat(most).isBetween(0.0, mostC + 0.0032);
    // the printed error is reached, so the range and its polynomial belong together
    assertThat(Math.max(-least / -leastC, most / mostC)).isGreaterThan(0.5);
  }

  private static Polynomial inverseOver(ThermocoupleType type, double lowC, double highC) {
    List<Polynomial> found =
        PublishedInverse.pieces(type).stream()
            .filter(piece -> Math.abs(piece.lowest() - type.emfMv(lowC)) < 0.001)
            .filter(piece -> Math.abs(piece.highest() - type.emfMv(highC)) < 0.001)
            .toList();
    assertThat(found).as("inverse of Type %s from %s to %s °C", type, lowC, highC).hasSize(1);
    return found.get(0);
  }

  private static int count(String direction) {
    int count = 0;
    for (ThermocoupleType type : ThermocoupleType.values()) {
      for (Polynomial each : CoefficientFile.polynomials(CoefficientFile.text(), type, direction)) {
        count += each.coefficients().length;
      }
    }
    return count;
  }
}
