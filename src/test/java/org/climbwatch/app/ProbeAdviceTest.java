package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.climbwatch.journal.ProbeDrift;
import org.junit.jupiter.api.Test;

class ProbeAdviceTest {
  @Test
  void probesThatHaveDriftedApartAreToldWithWhatWasSeenAndWhatToCheckFirst() {
    assertThat(ProbeAdvice.drift(new ProbeDrift("upper", 4.2, -31.4, 3)).orElseThrow())
        .startsWith(
            "In its first 3 firings it read 4 °C above probe upper, in the last 3 31 °C below")
        .contains("Check first where both tips are", "witness cones");
  }

  @Test
  void whatAKilnDoesFromFiringToFiringIsNoDrift() {
    assertThat(ProbeAdvice.drift(new ProbeDrift("upper", -40, -60, 3))).isEmpty();
    assertThat(ProbeAdvice.drift(new ProbeDrift("upper", -40, -62, 3))).isEmpty();
    assertThat(ProbeAdvice.drift(new ProbeDrift("upper", -40, -14, 3))).isPresent();
  }
}
