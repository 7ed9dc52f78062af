package org.climbwatch.source.recorded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingTest {
  @TempDir Path folder;

  @Test
  void timeAndTemperatureAreEnough() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c\n0,20\n1.5,20.25\n"))
        .containsExactly(
            measured(Reading.linearised(at(0), "upper", 20, OptionalDouble.empty())),
            measured(Reading.linearised(at(1500), "upper", 20.25, OptionalDouble.empty())));
  }

  @Test
  void theRawSignalIsPreferredAndColumnsMayStandAnywhere() throws IOException {
    assertThat(inputs("what,cold_junction_c,temperature_c,emf_mv,elapsed_s\nx,22.062,999,41.4,7\n"))
        .containsExactly(measured(Reading.emf(at(7000), "upper", 41.4, 22.062)));
  }

  @Test
  void aRowWithoutItsSignalFallsBackToItsTemperature() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c,emf_mv,cold_junction_c\n0,900,,21\n"))
        .containsExactly(measured(Reading.linearised(at(0), "upper", 900, OptionalDouble.of(21))));
  }

  @Test
  void faultsAreFaultsAndAnEmptyRowIsSilence() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c,quality\n0,,open_circuit\n1,900,garbled\n2,,\n"))
        .containsExactly(
            measured(Reading.faulty(at(0), "upper", Fault.OPEN_CIRCUIT)),
            measured(Reading.faulty(at(1000), "upper", Fault.GARBLED)),
            measured(Reading.faulty(at(2000), "upper", Fault.NO_ANSWER)));
  }

  @Test
  void aSignalThatWasOutOfRangeIsTakenAsASignal() throws IOException {
    assertThat(inputs("elapsed_s,emf_mv,cold_junction_c,quality\n0,-7.5,20,out_of_range\n"))
        .containsExactly(measured(Reading.emf(at(0), "upper", -7.5, 20)));
  }

  @Test
  void everyDeedComesBackAndTheProgramsOwnRowsArePassedOver() throws IOException {
    String rows =
        "elapsed_s,temperature_c,phase,note,action\r\n"
            + "0,,drying,glaze,began\r\n"
            + "0,,drying,kiln=top hat,configured\r\n"
            + "5,,holding,,declared\r\n"
            + "6,,holding,\"damper, \"\"half\"\"\r\nin\",noted\r\n"
            + "7,,holding,'=soft,noted\r\n"
            + "8,,holding,climb_stalled: Ann: kiln side,acknowledged\r\n"
            + "9,,holding,7-2,acknowledged\r\n"
            + "9,,holding,late thought,remarked\r\n"
            + "10,,holding,,ended\r\n";

    assertThat(inputs(rows))
        .containsExactly(
            new Input.Began(at(0), "glaze"),
            new Input.Declared(at(5000), Phase.HOLDING),
            new Input.Noted(at(6000), "damper, \"half\"\r\nin"),
            new Input.Noted(at(7000), "=soft"),
            new Input.Acknowledged(at(8000), "climb_stalled", "Ann: kiln side"),
            new Input.Acknowledged(at(9000), "7-2", ""),
            new Input.Ended(at(10_000)));
  }

  @Test
  void aNoteWithoutAnActionIsANote() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c,note\n3,,cone 9 soft\n"))
        .containsExactly(new Input.Noted(at(3000), "cone 9 soft"));
  }

  @Test
  void resumingBeginsAnotherBootWhoseTimeMayStandAnywhere() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c,action\n100,500,\n90,,resumed\n91,480,\n"))
        .containsExactly(
            measured(Reading.linearised(at(100_000), "upper", 500, OptionalDouble.empty())),
            new Input.Resumed(new Moment(1, 90_000)),
            measured(
                Reading.linearised(new Moment(1, 91_000), "upper", 480, OptionalDouble.empty())));
  }

  @Test
  void timeGoesOnWhereTheMachineHadStayedOn() throws IOException {
    assertThat(inputs("elapsed_s,temperature_c,action,note\n100,500,,\n103,,resumed,same boot\n"))
        .endsWith(new Input.Resumed(at(103_000)));
  }

  @Test
  void spreadsheetsHabitsAreUnderstood() throws IOException {
    List<Input> wanted =
        List.of(measured(Reading.linearised(at(1000), "upper", 20, OptionalDouble.empty())));

    assertThat(inputs("\uFEFF\"elapsed_s\",\"temperature_c\"\r\n\"1\",\" 20 \"\r\n\r\n"))
        .as("byte order mark, quotes, blanks, an empty line")
        .isEqualTo(wanted);
    assertThat(inputs("elapsed_s,temperature_c\r1,2e1\r")).as("CR alone").isEqualTo(wanted);
    assertThat(inputs("elapsed_s, temperature_c\n+1,20.0")).as("no last LF").isEqualTo(wanted);
  }

  @Test
  void numbersMeanWhatTheyMeanToJava() throws IOException {
    String[] texts = {"0", "-0.0625", ".5", "5.", "1234.567891234", "12345678901234567", "1.5E-3"};
    for (String text : texts) {
      char[] chars = ("x" + text + "y").toCharArray();
      assertThat(DecimalText.number(chars, 1, chars.length - 1))
          .isEqualTo(Double.parseDouble(text));
    }
    for (String text : new String[] {"", "-", ".", "NaN", "1d", "0x1p3", "1,5", "1 5", "--1"}) {
      char[] chars = text.toCharArray();
      assertThat(DecimalText.number(chars, 0, chars.length)).as(text).isNaN();
    }
  }

  @Test
  void rowsLongerThanTheBufferAreRead() throws IOException {
    String note = "x".repeat(100_000) + "\"\"" + "y".repeat(100_000);

    List<Input> inputs = inputs("elapsed_s,temperature_c,note\n3,,\"" + note + "\"\n");

    assertThat(((Input.Noted) inputs.get(0)).text()).isEqualTo(note.replace("\"\"", "\""));
  }

  @Test
  void whatIsWrongWithTheFileIsSaidWithWhatToDo() throws IOException {
    assertThatThrownBy(() -> new Recording(folder.resolve("none.csv"), List.of("upper")))
        .isInstanceOf(BadRecording.class)
        .hasMessage(folder.resolve("none.csv") + ": no such file");
    refused(
        "",
        "1: the file is empty; the first row must name the columns elapsed_s and"
            + " temperature_c, or elapsed_s, emf_mv and cold_junction_c, separated by ','");
    refused(
        "elapsed_s;temperature_c\n0;20,5\n",
        "1: columns are separated by ';'; save the file as"
            + " CSV with ',' between columns and '.' as the decimal point");
    refused(
        "elapsed_s\ttemperature_c\n",
        "1: columns are separated by tabs; save the file as CSV"
            + " with ',' between columns and '.' as the decimal point");
    refused(
        "time,temp\n0,1\n",
        "1: the first row must name the columns elapsed_s and"
            + " temperature_c, or elapsed_s, emf_mv and cold_junction_c, separated by ','; it names"
            + " time, temp");
    refused("elapsed_s,elapsed_s,temperature_c\n", "1: two columns are named elapsed_s; keep one");
    refused(
        "elapsed_s,temperature_c,note\n0,20,caf\u00e9\n",
        StandardCharsets.ISO_8859_1,
        "1: this is not UTF-8 text; save the file as CSV in UTF-8");
  }

  @Test
  void whatIsWrongWithARowIsSaidWithItsLine() throws IOException {
    String two = "elapsed_s,temperature_c\n0,20\n";
    refused(
        two + "1,20,5\n",
        "3: cells in this row: 3, columns in the first row: 2; write"
            + " decimals with '.', quote texts that hold ',', and leave no cell out");
    refused(
        two + "1\n",
        "3: cells in this row: 1, columns in the first row: 2; write decimals"
            + " with '.', quote texts that hold ',', and leave no cell out");
    refused(
        two + "1,\"20,5\"\n",
        "3: temperature_c = \"20,5\" is not a number; write it with '.'"
            + " as the decimal point, for example 1004.5");
    refused(
        two + ",20\n",
        "3: elapsed_s = \"\" is not a number; write it with '.' as the decimal"
            + " point, for example 1004.5");
    refused(
        two + "1,1e9\n",
        "3: temperature_c = 1.0E9 makes no sense; allowed: -10000.0 to" + " 10000.0");
    String several = "elapsed_s,temperature_c,samples,spread_c\n";
    refused(
        several + "1,20,2.5,0\n",
        "2: samples = 2.5 makes no sense; allowed: whole numbers from 1 on, or nothing");
    refused(
        several + "1,20,3,-1\n",
        "2: spread_c = -1.0 makes no sense; allowed: 0 or more, with samples above 1");
    refused(
        several + "1,20,,4\n",
        "2: spread_c = 4.0 makes no sense; allowed: 0 or more, with samples above 1");
    refused(two + "\n\n-1,20\n", "5: elapsed_s goes back; put the rows in the order of time");
    refused(two + "1,\"20\n2,20\n", "3: a cell that begins with \" never ends with one");
    refused(
        two + "1,\"20\"0\n",
        "3: text follows the closing \" of a cell; write \" inside as" + " \"\"");
    refused(
        "elapsed_s,temperature_c,quality\n0,,good\n",
        "2: quality is good but there is no"
            + " temperature; leave quality empty or name the fault");
    refused(
        "elapsed_s,temperature_c,quality\n0,,bad\n",
        "2: unknown quality \"bad\"; allowed:"
            + " good, open_circuit, short_to_ground, short_to_supply, out_of_range, below_range, wiring,"
            + " garbled, no_value, no_answer, device_gone");
    refused(
        "elapsed_s,temperature_c,action\n0,,lit\n",
        "2: action \"lit\" is unknown; allowed:"
            + " began, ended, declared, noted, acknowledged, shelved, unshelved, reset, resumed, reported, configured, remarked, or empty");
    refused(
        "elapsed_s,temperature_c,phase,action\n0,,soaking,declared\n",
        "2: unknown phase" + " \"soaking\"; allowed: idle, drying, climbing, holding, cooling");
    refused(
        "elapsed_s,probe,temperature_c\n0,upper,20\n0,lower,19\n",
        "3: readings of two probes"
            + " at one time, upper and lower; keep the rows of one, or"
            + " name a configuration with a [[probe]] for each");
  }

  private void refused(String text, String message) throws IOException {
    refused(text, StandardCharsets.UTF_8, message);
  }

  private void refused(String text, Charset charset, String message) throws IOException {
    Path file = folder.resolve("firing.csv");
    Files.write(file, text.getBytes(charset));
    assertThatThrownBy(() -> all(file))
        .isInstanceOf(BadRecording.class)
        .hasMessage(file + ":" + message);
  }

  private List<Input> inputs(String text) throws IOException {
    return all(Files.writeString(folder.resolve("firing.csv"), text));
  }

  private static List<Input> all(Path file) {
    List<Input> all = new ArrayList<>();
    try (Recording recording = new Recording(file, List.of("upper"))) {
      Optional<Input> next = recording.next();
      while (next.isPresent()) {
        all.add(next.get());
        next = recording.next();
      }
    }
    return all;
  }

  private static Input measured(Reading reading) {
    return new Input.Measured(reading);
  }

  private static Moment at(long millis) {
    return new Moment(0, millis);
  }
}
