package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;

/** The table in docs/straight-line.md: what a straight line shows, and what is made of it. */
class StraightLineTest {
  private static final ThermocoupleType K = ThermocoupleType.K;
  private static final Path PAGE = Path.of("docs/straight-line.md");
  private static final double[] BOXES_C = {5, 25, 60};

  /** µV/°C, MAX31855 data sheet 19-5793. */
  private static final double LINE_UV_PER_C = 41.276;

  @Test
  void everyRowOfThePageIsWhatTheProgramFinds() throws IOException {
    List<String> rows =
        Files.readAllLines(PAGE).stream().filter(line -> line.matches("\\| \\d+ \\|.*")).toList();

    assertThat(rows).hasSize(26);
    for (int i = 0; i < rows.size(); i++) {
      assertThat(rows.get(i)).isEqualTo(row(50 * i));
    }
  }

  @Test
  void chipsFrameGivesTheTruthAgainButForItsSteps() {
    for (double coldC : BOXES_C) {
      for (int trueC = 0; trueC <= 1250; trueC += 50) {
        Reading.Emf reading =
            (Reading.Emf) Max31855.decode(frame(shownC(trueC, coldC), coldC), K, at(), "upper");

        assertThat(ColdJunction.hotJunctionC(K, reading.emfMv(), reading.coldJunctionC()))
            .as("%d °C, box at %s °C", trueC, coldC)
            .isCloseTo(trueC, within(0.16));
      }
    }
  }

  private static String row(int trueC) {
    StringBuilder row = new StringBuilder("| " + trueC + " |");
    for (double coldC : BOXES_C) {
      double shownC = shownC(trueC, coldC);
      String off = String.format(Locale.ROOT, "%+.1f", shownC - trueC);
      row.append(String.format(Locale.ROOT, " %.1f | ", shownC))
          .append(off.endsWith("0.0") ? "0.0" : off)
          .append(" |");
    }
    return row.toString();
  }

  private static double shownC(double trueC, double coldC) {
    return ColdJunction.emfMv(K, trueC, coldC) * 1000 / LINE_UV_PER_C + coldC;
  }

  private static byte[] frame(double shownC, double coldC) {
    int hot = (int) Math.rint(shownC / 0.25);
    int cold = (int) Math.rint(coldC / 0.0625);
    return ByteBuffer.allocate(4).putInt(hot << 18 | cold << 4).array();
  }

  private static Moment at() {
    return new Moment(0, 0);
  }
}
