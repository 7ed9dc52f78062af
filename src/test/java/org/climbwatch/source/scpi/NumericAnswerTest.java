package org.climbwatch.source.scpi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumericAnswerTest {
  /** The forms NR1, NR2 and NR3 of IEEE 488.2-1992, section 8.7. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "1221, 1221",
    "+0, 0",
    "-18, -18",
    "1221.9, 1221.9",
    "+.5, 0.5",
    "5., 5",
    "+1.22190000E+03, 1221.9",
    "-3.1E-4, -0.00031",
    "' 25.5 ', 25.5",
    "'25.5\r', 25.5",
    "4.1e-2, 0.041",
  })
  void numbersOfTheStandardsForms(String line, double number) {
    assertThat(NumericAnswer.of(line)).isEqualTo(new NumericAnswer.Value(number));
  }

  /** SCPI-1999 Volume 1, section 7.2.1: infinity is 9.9E37, not-a-number 9.91E37. */
  @ParameterizedTest
  @ValueSource(strings = {"9.9E37", "+9.90000000E+37", "-9.9E+37", "9.9e37", "INF", "NINF"})
  void infinityOfEitherSignIsOverload(String line) {
    assertThat(NumericAnswer.of(line)).isEqualTo(new NumericAnswer.Overload());
  }

  @ParameterizedTest
  @ValueSource(strings = {"9.91E37", "+9.91000000E+37", "9.91e+37", "NAN", "NaN"})
  void notANumberIsNotOverload(String line) {
    assertThat(NumericAnswer.of(line)).isEqualTo(new NumericAnswer.NotANumber());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "OVLD",
        "1,2",
        "1221.9 C",
        "0x20",
        "1221.9d",
        "1_000",
        "12 21",
        "--5",
        "E5",
        ".",
        "0,\"No error\"",
        "1E",
        "1E1234",
        "\u0661\u0662",
        "1221,9",
        "MEAS:TEMP?",
        "Infinityx"
      })
  void anythingElseIsUnreadable(String line) {
    assertThat(NumericAnswer.of(line)).isEqualTo(new NumericAnswer.Unreadable());
  }

  @Property
  void everyNumberComesBack(@ForAll @DoubleRange(min = -1e6, max = 1e6) double number) {
    String line = String.format(Locale.ROOT, "%+.15E", number);

    assertThat(NumericAnswer.of(line)).isEqualTo(new NumericAnswer.Value(Double.parseDouble(line)));
  }

  @Property
  void noLineEndsInAnException(@ForAll String line) {
    assertThat(NumericAnswer.of(line)).isNotNull();
  }
}
