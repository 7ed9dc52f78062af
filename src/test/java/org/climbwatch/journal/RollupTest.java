package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RollupTest {
  private final List<Rollup.Block> blocks = new ArrayList<>();
  private final Rollup rollup = new Rollup(blocks::add);
  private long seq;

  private void good(long ms, int milliC) throws SQLException {
    rollup.good(++seq, 0, ms, 1, milliC, false);
  }

  @Test
  void aMinuteKeepsItsEndsAndItsPeaksAtTheirTimes() throws SQLException {
    good(60_000, 500_000);
    good(61_000, 530_000);
    good(62_000, 470_000);
    good(63_000, 510_000);
    good(120_000, 520_000);

    assertThat(blocks)
        .containsExactly(
            new Rollup.Block(
                1,
                4,
                0,
                1,
                true,
                1000,
                new Rollup.Point(60_000, 500_000),
                new Rollup.Point(63_000, 510_000),
                new Rollup.Point(62_000, 470_000),
                new Rollup.Point(61_000, 530_000)));
  }

  @Test
  void aFaultEndsABlockAndTheNextOneSaysSo() throws SQLException {
    good(60_000, 500_000);
    rollup.fault();
    good(62_000, 501_000);
    good(63_000, 501_500);
    rollup.finish();

    assertThat(blocks).extracting(Rollup.Block::gapBefore).containsExactly(true, true);
  }

  @Test
  void aMinuteWithoutAGapIsFollowedByOneThatSaysSo() throws SQLException {
    good(119_000, 500_000);
    good(120_000, 501_000);
    rollup.finish();

    assertThat(blocks).extracting(Rollup.Block::gapBefore).containsExactly(true, false);
  }

  @Test
  void aSpikeIsNeitherAPeakNorAGap() throws SQLException {
    good(60_000, 500_000);
    rollup.good(++seq, 0, 61_000, 1, 900_000, true);
    good(62_000, 501_000);
    rollup.finish();

    assertThat(blocks).hasSize(1);
    assertThat(blocks.get(0).max()).isEqualTo(new Rollup.Point(62_000, 501_000));
  }

  @Test
  void anotherProbeIsNotMixedIn() throws SQLException {
    good(60_000, 500_000);
    rollup.good(++seq, 0, 61_000, 2, 300_000, false);
    rollup.finish();

    assertThat(blocks).extracting(Rollup.Block::probe).containsExactly(1, 2);
  }

  @Test
  void nothingIsHandedOnWhenNothingCame() throws SQLException {
    rollup.fault();
    rollup.finish();

    assertThat(blocks).isEmpty();
  }
}
