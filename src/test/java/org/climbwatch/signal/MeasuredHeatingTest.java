package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The forecast on a curve that somebody measured: a small electric heater at constant power, from
 * cold to its level (the package TCLab; source and license in the file). None of a kiln was to be
 * had. What takes it 17 minutes is told twenty times as slowly, so that it bends like a kiln's.
 */
class MeasuredHeatingTest {
  private static final int SLOWER = 20;
  private static final double TARGET_C = 60;

  private static double[] celsius;

  @BeforeAll
  static void read() throws IOException {
    try (InputStream in = MeasuredHeatingTest.class.getResourceAsStream("measured-heating.csv")) {
      List<String> rows =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .skip(1)
              .toList();
      celsius = rows.stream().mapToDouble(row -> Double.parseDouble(row.split(",")[1])).toArray();
    }
  }

  /**
   * Of all forecasts, 90 % are meant to hold the level; here it is 23 of 28. Those that miss are of
   * the first half of the rise, where the sensor's lag still bends the curve the other way.
   */
  @Test
  void fourInFiveForecastsHoldTheLevelThatItCameTo() {
    long right = IntStream.range(3, 31).filter(i -> holdsTheLevel(20 * i)).count();

    assertThat(right).isGreaterThanOrEqualTo(23);
  }

  @Test
  void fromTwoThirdsOfTheRiseOnAllDo() {
    for (int measuredS = 220; measuredS <= 600; measuredS += 20) {
      assertThat(holdsTheLevel(measuredS)).as("after %d s", measuredS).isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {220, 240, 260, 280, 300, 320})
  void theTimeAtWhichItCameToSixtyDegreesLiesInTheInterval(int measuredS) {
    Span arrivalS = after(measuredS).arrivalS().orElseThrow();

    double stillS = (reachedS() - measuredS) * SLOWER;
    assertThat(stillS).isBetween(arrivalS.low(), arrivalS.high());
  }

  /** 42 °C were the whole rise. */
  @Test
  void theLevelIsKnownToAFewDegreesWhenThreeQuartersOfTheRiseAreDone() {
    assertThat(after(240).levelC().best()).isBetween(levelC() - 4, levelC() + 4);
  }

  private static boolean holdsTheLevel(int measuredS) {
    Span level = after(measuredS).levelC();
    return levelC() >= level.low() && levelC() <= level.high();
  }

  private static Forecast.Known after(int measuredS) {
    Forecaster forecaster = new Forecaster();
    for (int s = 0; s <= measuredS * SLOWER; s++) {
      forecaster.add(s * 1000L, at(s / (double) SLOWER), OptionalDouble.of(TARGET_C));
    }
    return forecaster.forecast().known().orElseThrow();
  }

  /** Between two rows lies a straight line. */
  private static double at(double measuredS) {
    int row = Math.min((int) (measuredS / 10), celsius.length - 2);
    double part = measuredS / 10 - row;
    return celsius[row] + part * (celsius[row + 1] - celsius[row]);
  }

  /** °C, over the last five minutes of the measurement. */
  private static double levelC() {
    double sum = 0;
    for (int i = celsius.length - 30; i < celsius.length; i++) {
      sum += celsius[i];
    }
    return sum / 30;
  }

  private static double reachedS() {
    int row = 0;
    while (celsius[row + 1] < TARGET_C) {
      row++;
    }
    return 10 * (row + (TARGET_C - celsius[row]) / (celsius[row + 1] - celsius[row]));
  }
}
