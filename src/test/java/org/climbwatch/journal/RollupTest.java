package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RollupTest {
  private final List<Rollup.Block> blocks = new ArrayList<>();
  private final Rollup rollup = new Rollup(1, blocks::add);
  private long seq;

  private void good(long ms, int milliC) throws SQLException {
    rollup.good(++seq, 0, ms, milliC, false);
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
    rollup.good(++seq, 0, 61_000, 900_000, true);
    good(62_000, 501_000);
    rollup.finish();

    assertThat(blocks).hasSize(1);
    assertThat(blocks.get(0).max()).isEqualTo(new Rollup.Point(62_000, 501_000));
  }

  @Test
  void probesThatTakeTurnsEachHaveMinutesOfTheirOwn() throws SQLException {
    Rollups rollups = new Rollups(blocks::add);
    for (int s = 0; s < 120; s++) {
      rollups.good(2 * s + 1, 0, s * 1000L, 1, 500_000 + s, false);
      if (s == 90) {
        rollups.fault(2 * s + 2, 2);
      } else {
        rollups.good(2 * s + 2, 0, s * 1000L, 2, 400_000 - s, false);
      }
    }
    rollups.finish();

    assertThat(blocks.stream().filter(block -> block.probe() == 1))
        .extracting(Rollup.Block::gapBefore)
        .containsExactly(true, false);
    assertThat(blocks.stream().filter(block -> block.probe() == 2))
        .extracting(block -> block.min().milliC())
        .containsExactly(400_000 - 59, 400_000 - 89, 400_000 - 119);
  }

  @Test
  void goesOnBehindEachProbesStoredMinutes() throws SQLException {
    Rollups whole = new Rollups(blocks::add);
    List<Rollup.Block> resumedBlocks = new ArrayList<>();
    for (int s = 0; s < 100; s++) {
      whole.good(2 * s + 1, 0, s * 1000L, 1, 500_000 + s, false);
      whole.good(2 * s + 2, 0, s * 1000L, 2, 400_000 - s, false);
    }
    Rollups resumed = new Rollups(resumedBlocks::add);
    blocks.forEach(resumed::resumeAfter);
    int stored = blocks.size();
    for (int s = 0; s < 100; s++) {
      resumed.good(2 * s + 1, 0, s * 1000L, 1, 500_000 + s, false);
      resumed.good(2 * s + 2, 0, s * 1000L, 2, 400_000 - s, false);
    }
    whole.finish();
    resumed.finish();

    assertThat(stored).isEqualTo(2);
    assertThat(resumedBlocks).isEqualTo(blocks.subList(stored, blocks.size()));
  }

  @Test
  void nothingIsHandedOnWhenNothingCame() throws SQLException {
    rollup.fault();
    rollup.finish();

    assertThat(blocks).isEmpty();
  }
}
