package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextLineTest {
  /**
   * The examples of hardware-notes/text-line.md. Their checks were made by another program, in
   * another language, from the definition of CRC-8/SMBUS.
   */
  @Test
  @DisplayName("the published examples mean what the notes say")
  void examplesOfTheNotesAreRead() {
    assertThat(decode("emf_uv=41234.5 cj_c=24.31 *25:40"))
        .isEqualTo(accepted(new Signal.Emf(41.2345, 24.31)));
    assertThat(decode("temp_c=1221.9 *13:AB"))
        .isEqualTo(accepted(new Signal.Linearised(1221.9, OptionalDouble.empty())));
    assertThat(decode("temp_c=1221.9 cj_c=24.31 *24:3F"))
        .isEqualTo(accepted(new Signal.Linearised(1221.9, OptionalDouble.of(24.31))));
    assertThat(decode("fault=open *10:51"))
        .isEqualTo(accepted(new Signal.Faulty(Fault.OPEN_CIRCUIT)));
    assertThat(decode("emf_uv=-12.5 cj_c=-3.25 *23:04"))
        .isEqualTo(accepted(new Signal.Emf(-0.0125, -3.25)));
  }

  /**
   * What hardware-notes/sketch/text_line printed, compiled with g++ against a stand-in for the
   * board, when the chip gave 4B341900, F0601900 and 7FFD1902 hex.
   */
  @Test
  void linesOfTheSketchAreRead() {
    assertThat(decode("emf_uv=48633.4 cj_c=25.00 *25:F0"))
        .isEqualTo(accepted(new Signal.Emf(48.6334, 25)));
    assertThat(decode("emf_uv=-11350.9 cj_c=25.00 *26:32"))
        .isEqualTo(accepted(new Signal.Emf(-11.3509, 25)));
    assertThat(decode("fault=short_ground *18:C1"))
        .isEqualTo(accepted(new Signal.Faulty(Fault.SHORT_TO_GROUND)));
  }

  @Test
  void oneCarriageReturnBeforeTheEndIsTolerated() {
    assertThat(decode("temp_c=1221.9 *13:AB\r"))
        .isEqualTo(accepted(new Signal.Linearised(1221.9, OptionalDouble.empty())));
    assertThat(decode("temp_c=1221.9 *13:AB\r\r")).isEqualTo(declined(Decline.NOT_ASCII));
  }

  @Test
  void theOrderOfFieldsIsFree() {
    assertThat(checked("cj_c=24.31 emf_uv=41234.5"))
        .isEqualTo(checked("emf_uv=41234.5 cj_c=24.31"));
  }

  @ParameterizedTest(name = "fault={0} is {1}")
  @CsvSource({
    "open, OPEN_CIRCUIT",
    "short_ground, SHORT_TO_GROUND",
    "short_supply, SHORT_TO_SUPPLY",
    "range, OUT_OF_RANGE"
  })
  void everyFaultOfTheFormatIsRead(String word, Fault fault) {
    assertThat(checked("fault=" + word)).isEqualTo(accepted(new Signal.Faulty(fault)));
    assertThat(checked("cj_c=20 fault=" + word)).isEqualTo(accepted(new Signal.Faulty(fault)));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "'temp_c=1221.9', UNCHECKED",
    "'temp_c=1221.9*13:AB', UNCHECKED",
    "'temp_c=1221.9 *AB', UNCHECKED",
    "'temp_c=1221.9 *13:ab', UNCHECKED",
    "'temp_c=1221.9 *13:AB ', UNCHECKED",
    "'temp_c=1221.9 *013:AB', UNCHECKED",
    "'temp_c=1221.9 *13:', UNCHECKED",
    "'', UNCHECKED",
    "'temp_c=121.9 *13:AB', LENGTH",
    "'temp_c=1221.9 *14:AB', LENGTH",
    "'temp_c=1321.9 *13:AB', CHECKSUM",
    "'temp_c=1221.9 *13:AC', CHECKSUM",
    "'temp_c=1221,9\u00B0 *13:AB', NOT_ASCII",
    "'\0temp_c=1221.9 *13:AB', NOT_ASCII",
  })
  void aLineThatIsNotWholeIsDeclined(String line, Decline why) {
    assertThat(decode(line)).isEqualTo(declined(why));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "'temp_c=1221,9', SYNTAX",
    "'temp_c=nan', SYNTAX",
    "'temp_c=NaN', SYNTAX",
    "'temp_c=1e3', SYNTAX",
    "'temp_c=+20', SYNTAX",
    "'temp_c=.5', SYNTAX",
    "'temp_c=5.', SYNTAX",
    "'temp_c=--5', SYNTAX",
    "'temp_c=0x20', SYNTAX",
    "'temp_c=20d', SYNTAX",
    "'temp_c=', SYNTAX",
    "'=20', SYNTAX",
    "'temp_c', SYNTAX",
    "' temp_c=20', SYNTAX",
    "'temp_c=20 ', SYNTAX",
    "'temp_c=20  cj_c=20', SYNTAX",
    "'temp_c=1234567', SYNTAX",
    "'temp_f=2000', UNKNOWN_KEY",
    "'TEMP_C=20', UNKNOWN_KEY",
    "'fault=none', UNKNOWN_KEY",
    "'temp_c=20 temp_c=20', REPEATED_KEY",
    "'fault=open fault=open', REPEATED_KEY",
    "'temp_c=-270.1', OUT_OF_RANGE",
    "'temp_c=1820.1', OUT_OF_RANGE",
    "'emf_uv=100000.1 cj_c=20', OUT_OF_RANGE",
    "'emf_uv=-100000.1 cj_c=20', OUT_OF_RANGE",
    "'emf_uv=0 cj_c=-55.1', OUT_OF_RANGE",
    "'emf_uv=0 cj_c=125.1', OUT_OF_RANGE",
    "'emf_uv=41234.5', INCOMPLETE",
    "'cj_c=20', INCOMPLETE",
    "'emf_uv=0 cj_c=20 temp_c=20', CONTRADICTORY",
    "'fault=open temp_c=20', CONTRADICTORY",
    "'fault=open emf_uv=0 cj_c=20', CONTRADICTORY",
  })
  void aWholeLineThatMeansNothingIsDeclined(String fields, Decline why) {
    assertThat(checked(fields)).isEqualTo(declined(why));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "temp_c=-270",
    "temp_c=1820",
    "'emf_uv=100000 cj_c=125'",
    "'emf_uv=-100000 cj_c=-55'"
  })
  void theEdgesOfTheRangesAreTaken(String fields) {
    assertThat(checked(fields)).isInstanceOf(TextLine.Accepted.class);
  }

  @Test
  void aLineLongerThanAllowedIsDeclinedWhateverItSays() {
    String spun = "temp_c=20 " + "x".repeat(70) + "=1";

    assertThat(checked(spun)).isEqualTo(declined(Decline.TOO_LONG));
  }

  private static TextLine.Decoded checked(String fields) {
    return decode(AmplifierEmulator.line(fields).stripTrailing());
  }

  private static TextLine.Decoded decode(String line) {
    return TextLine.decode(line.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static TextLine.Decoded accepted(Signal signal) {
    return new TextLine.Accepted(signal);
  }

  private static TextLine.Decoded declined(Decline why) {
    return new TextLine.Declined(why);
  }
}
