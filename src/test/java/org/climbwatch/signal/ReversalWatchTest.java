package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class ReversalWatchTest {
  private static final double COLD_JUNCTION_C = 20;

  private final ReversalWatch watch = new ReversalWatch();
  private long millis;

  private Optional<Reversal> reads(double celsius, int times) {
    Optional<Reversal> last = Optional.empty();
    for (int i = 0; i < times; i++) {
      last = watch.look(millis, celsius, COLD_JUNCTION_C);
      millis += 1000;
    }
    return last;
  }

  @Test
  void sparksAtLightingProveNoWiresRight() {
    reads(14, 9);
    reads(500, 1);
    reads(14, 5);
    reads(60, 3);

    assertThat(reads(-6, 60)).hasValue(new Reversal(26, 506));
  }

  @Test
  void aProbeThatReadsWarmIsWiredRight() {
    reads(60, 5);

    assertThat(reads(-6, 60)).isEmpty();
  }
}
