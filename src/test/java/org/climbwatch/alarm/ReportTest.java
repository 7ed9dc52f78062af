package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportTest {
  @Property
  void comesBackFromItsTextAsItWas(@ForAll("reports") Report report) {
    assertThat(Report.of(report.matter(), report.text())).isEqualTo(report);
    assertThat(report.text()).isNotBlank().doesNotContain("\n", "\r");
  }

  @Provide
  Arbitrary<Report> reports() {
    Arbitrary<String> texts = Arbitraries.strings().withChars("\r\n\t wel:;ä窯").ofMaxLength(12);
    return Arbitraries.oneOf(
        texts.map(Report.Writing::new),
        texts.map(Report.Clock::new),
        Arbitraries.longs().between(0, 1_000_000_000).map(Report.FreeSpace::new),
        Arbitraries.longs().between(-4_000_000_000L, 4_000_000_000L).map(Report.ClockJump::new));
  }

  @ParameterizedTest
  @CsvSource({
    "free_space, 183, followed by",
    "free_space, 18.3 MB, whole number",
    "free_space, -1 MB, 0 MB or more",
    "clock_jump, 99999999999999999999 s, whole number",
    "weather, fair, allowed: writing",
    "'', '', allowed: writing"
  })
  void whatNoReportSaysIsRefusedWithWhatIsAllowed(String matter, String text, String complaint) {
    assertThatThrownBy(() -> Report.of(matter, text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(complaint);
  }
}
