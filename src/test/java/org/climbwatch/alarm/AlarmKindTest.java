package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AlarmKindTest {
  @ParameterizedTest
  @EnumSource
  void onlyAProbeThatTheFiringGoesByIsOfHighPriority(AlarmKind kind) {
    assertThat(kind.priority(true)).isEqualTo(kind.priority());
    assertThat(kind.priority(false))
        .isEqualTo(kind.priority() == Priority.LOW ? Priority.LOW : Priority.MEDIUM);
  }
}
