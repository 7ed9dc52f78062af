package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Other settings of a rule keep what they do not name, and its limits. */
class RuleChangeTest {
  private static RuleChange stalled(Map<String, Double> numbers) {
    return new RuleChange(ClimbStalled.KIND, Optional.empty(), numbers);
  }

  @Test
  void whatIsNotNamedStaysAsItWas() {
    RuleSettings before =
        ClimbStalled.KIND.settings(
            false,
            Map.of("least_climb_c_per_h", 35.0, "from_c", 250.0, "patience_min", 5.0),
            Delays.ofSeconds(400, 90));

    RuleSettings after = stalled(Map.of("on_delay_s", 300.5)).on(before);

    assertThat(after.enabled()).isFalse();
    assertThat(after.number("least_climb_c_per_h")).isEqualTo(35);
    assertThat(after.number("from_c")).isEqualTo(250);
    assertThat(after.delays().on()).hasMillis(300_500);
    assertThat(after.delays().off()).hasSeconds(90);
  }

  @Test
  void everySettableNumberOfEveryRuleCanBeSetToBothItsLimits() {
    for (RuleKind kind : Rules.ALL) {
      for (RuleKind.Number number : RuleChange.settable(kind)) {
        for (double limit : new double[] {number.low(), number.high()}) {
          RuleSettings after =
              new RuleChange(kind, Optional.of(true), Map.of(number.key(), limit)).on(kind.usual());

          assertThat(RuleChange.value(after, number.key()))
              .as("%s.%s", kind.alarm().word(), number.key())
              .isEqualTo(limit);
        }
        assertThat(RuleChange.value(kind.usual(), number.key())).isEqualTo(number.usual());
      }
    }
  }

  @Test
  void aNumberOutOfItsLimitsOrAKeyOfAnotherRuleIsRefused() {
    for (double wrong : new double[] {0.999, 500.001, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> stalled(Map.of("least_climb_c_per_h", wrong)))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThatThrownBy(() -> stalled(Map.of("on_delay_s", 7200.1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> stalled(Map.of("drop_c", 4.0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("unknown key drop_c");
  }
}
