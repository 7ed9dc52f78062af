package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No setting that a rule cannot work with gets past the core, whoever made it. */
class RuleSettingsLimitsTest {
  record Case(RuleKind kind, RuleKind.Number number) {}

  static Stream<Case> numbers() {
    return Rules.ALL.stream()
        .flatMap(kind -> kind.numbers().stream().map(number -> new Case(kind, number)));
  }

  private static RuleSettings with(Case one, double value) {
    RuleSettings usual = one.kind().usual();
    Map<String, Double> numbers = new TreeMap<>(usual.numbers());
    numbers.put(one.number().key(), value);
    return one.kind().settings(true, numbers, usual.delays());
  }

  @ParameterizedTest
  @MethodSource("numbers")
  void itsEndsAreAllowedAndWhatLiesBeyondIsNot(Case one) {
    double low = one.number().low();
    double high = one.number().high();

    assertThat(with(one, low).numbers()).containsEntry(one.number().key(), low);
    assertThat(with(one, high).numbers()).containsEntry(one.number().key(), high);
    for (double beyond : new double[] {Math.nextDown(low), Math.nextUp(high), Double.NaN}) {
      assertThatThrownBy(() -> with(one, beyond))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining(one.number().key());
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {-1, 7201})
  void delaysAreTwoHoursAtMost(long seconds) {
    assertThatThrownBy(() -> Delays.ofSeconds(seconds, 0)).hasMessageContaining("on-delay");
    assertThatThrownBy(() -> Delays.ofSeconds(0, seconds)).hasMessageContaining("off-delay");
  }
}
