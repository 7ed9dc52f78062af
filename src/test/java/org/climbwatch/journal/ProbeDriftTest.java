package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.climbwatch.journal.Fixture.at;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Judged;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two probes beside each other, from firing to firing. */
class ProbeDriftTest {
  private static final long HOUR_MS = 3_600_000;

  @TempDir Path folder;

  private Path file() {
    return folder.resolve("journal.sqlite");
  }

  private static Judged good(Moment at, String probe, double temperatureC) {
    return new Judged(
        Reading.emf(at, probe, temperatureC / 25, 24.5),
        OptionalDouble.of(temperatureC),
        OptionalDouble.of(3),
        Optional.empty(),
        false,
        Optional.empty(),
        Phase.CLIMBING);
  }

  /** Firings a day apart; in each the lower probe reads so much beside the followed one. */
  private void fire(double... lowerAboveC) {
    try (Journal journal = Journal.open(file(), Fixture.CODEC)) {
      journal.boot("a", 0, Fixture.WALL_MS);
      for (int i = 0; i < lowerAboveC.length; i++) {
        long fromMs = i * 24 * HOUR_MS;
        Fixture.begin(journal, at(0, fromMs), "glaze");
        for (long ms = 1000; ms <= 2 * HOUR_MS; ms += 10_000) {
          double upperC = 700 + 250.0 * ms / HOUR_MS;
          // below 800 °C they stand otherwise, which must not count
          double aboveC = upperC < 780 ? -200 : lowerAboveC[i];
          journal.append(good(at(0, fromMs + ms), Fixture.PROBE, upperC));
          journal.append(good(at(0, fromMs + ms), "lower", upperC + aboveC));
        }
        Fixture.end(journal, at(0, fromMs + 3 * HOUR_MS), "glaze");
      }
    }
  }

  private Optional<ProbeDrift> drift(long sinceWallMs) {
    try (Firings firings = Firings.open(file())) {
      return firings.drift("lower", sinceWallMs);
    }
  }

  @Test
  void theMiddleOfTheLastThreeFiringsIsComparedWithThatOfTheFirstThree() {
    fire(-10, -12, -14, -20, -40, -42, -44);

    ProbeDrift drift = drift(Long.MIN_VALUE).orElseThrow();
    assertThat(drift.beside()).isEqualTo(Fixture.PROBE);
    assertThat(drift.earlierC()).isCloseTo(-12, within(0.5));
    assertThat(drift.latelyC()).isCloseTo(-42, within(0.5));
    assertThat(drift.changeC()).isCloseTo(-30, within(0.5));
  }

  @Test
  void oneOddFiringIsNoDrift() {
    fire(-10, -12, -11, -10, -80, -12);

    assertThat(drift(Long.MIN_VALUE).orElseThrow().changeC()).isCloseTo(0, within(2.0));
  }

  @Test
  void fewerThanSixFiringsTellNothing() {
    fire(-10, -12, -11, -50, -51);

    assertThat(drift(Long.MIN_VALUE)).isEmpty();
  }

  @Test
  void firingsBeforeTheCoupleWasPutInDoNotCount() {
    fire(60, 60, 60, -10, -12, -11, -10, -13, -12);

    assertThat(drift(Fixture.WALL_MS + 60 * HOUR_MS).orElseThrow().changeC())
        .isCloseTo(0, within(2.5));
    assertThat(drift(Fixture.WALL_MS + 130 * HOUR_MS)).isEmpty();
  }

  @Test
  void theFollowedProbeHasNoOtherToStandBeside() {
    fire(-10, -12, -14, -20, -40, -42);

    try (Firings firings = Firings.open(file())) {
      assertThat(firings.drift(Fixture.PROBE, Long.MIN_VALUE)).isEmpty();
      assertThat(firings.drift("elsewhere", Long.MIN_VALUE)).isEmpty();
    }
  }
}
