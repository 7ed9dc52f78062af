package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.climbwatch.source.spi.EmulatedBuses;
import org.climbwatch.source.spi.EmulatedBuses.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/**
 * What {@code check} says of amplifiers on SPI that are well and of broken ones, down to the bytes
 * of emulated chips; and that the notes show what it says. Everything but the bus of a Pi is the
 * program's own.
 */
class CheckSpiIT {
  private static final Path NOTES = Path.of("hardware-notes/check-spi.md");

  private static final String CHIP =
      """
      [[probe]]
      name = "%s"
      source = "spi"
      [probe.spi]
      chip = "%s"
      bus = %d
      chip_select = %d
      """;

  private static final String ALL =
      CHIP.formatted("upper", "max31855", 0, 0)
          + CHIP.formatted("middle", "max31856", 0, 1)
          + CHIP.formatted("lower", "ads1118", 1, 0)
          + CHIP.formatted("flue", "max6675", 1, 1);

  @TempDir Path folder;

  private record Checked(int exit, String output) {
    String row(String probe) {
      return output.lines().filter(line -> line.startsWith(probe + " ")).findFirst().orElseThrow();
    }
  }

  /** 1000 °C at 25 °C of the chip: 41.276 - 1.000 mV, NIST SRD 60. */
  @Test
  void fourChipsThatAreWell() throws IOException {
    Checked checked = check(ALL, Trouble.NONE);

    assertThat(checked.row("upper")).contains(" 40.27", " 25.00 ", " 1000.0 ", " none");
    assertThat(checked.row("middle")).contains(" 40.27", " 25.00 ", " none");
    assertThat(checked.row("lower")).contains(" 25.00 ", " none");
    assertThat(checked.row("flue")).contains(" none");
    assertThat(checked.output()).doesNotContain("Not well");
    assertThat(checked.exit()).isZero();
  }

  @Test
  void couplesThatAreOpen() throws IOException {
    assertAllFault(check(ALL, Trouble.OPEN_COUPLE), "open_circuit");
  }

  @Test
  void busThatGivesOnlyZeros() throws IOException {
    assertAllFault(check(ALL, Trouble.ONLY_ZEROS), "wiring");
  }

  @Test
  void busThatGivesOnlyOnes() throws IOException {
    assertAllFault(check(ALL, Trouble.ONLY_ONES), "wiring");
  }

  @Test
  void busThatIsNotSwitchedOn() throws IOException {
    assertAllFault(check(ALL, Trouble.NO_DEVICE), "device_gone");
  }

  @Test
  void coupleThatTouchesGround() throws IOException {
    Checked checked = check(CHIP.formatted("upper", "max31855", 0, 0), Trouble.TOUCHES_GROUND);

    assertThat(checked.row("upper")).contains("short_to_ground x ");
    assertThat(checked.exit()).isEqualTo(1);
  }

  @Test
  void couplesThatTouchTheSupply() throws IOException {
    String both =
        CHIP.formatted("upper", "max31855", 0, 0) + CHIP.formatted("middle", "max31856", 0, 1);
    Checked checked = check(both, Trouble.TOUCHES_SUPPLY);

    assertThat(checked.row("upper")).contains("short_to_supply x ");
    assertThat(checked.row("middle")).contains("short_to_supply x ");
    assertThat(checked.exit()).isEqualTo(1);
  }

  @Test
  void chipsThatHearNothing() throws IOException {
    String both =
        CHIP.formatted("middle", "max31856", 0, 1) + CHIP.formatted("lower", "ads1118", 1, 0);
    Checked checked = check(both, Trouble.MOSI_OFF);

    assertThat(checked.row("middle")).contains("wiring x ");
    assertThat(checked.row("lower")).contains("wiring x ");
    assertThat(checked.output()).contains("MOSI");
    assertThat(checked.exit()).isEqualTo(1);
  }

  private static void assertAllFault(Checked checked, String fault) {
    for (String probe : List.of("upper", "middle", "lower", "flue")) {
      assertThat(checked.row(probe)).matches(probe + "( +-){4}  " + fault + " x \\d+");
    }
    assertThat(checked.exit()).isEqualTo(1);
  }

  /** Runs it, and looks for its output in the notes, where how many there were does not count. */
  private Checked check(String config, Trouble trouble) throws IOException {
    Path file = Files.writeString(folder.resolve("kiln.toml"), config);
    StringWriter out = new StringWriter();
    int exit =
        new CommandLine(new CheckCommand(new EmulatedBuses(trouble, 40.276, 25)))
            .setOut(new PrintWriter(out))
            .execute("--seconds", "2", "--config", file.toString());
    // kept for whoever writes the notes
    Files.writeString(
        Path.of("target", "check-spi.txt"),
        trouble + "\n" + out + "\n",
        StandardCharsets.UTF_8,
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
    assertThat(uncounted(Files.readString(NOTES))).contains(uncounted(out.toString()));
    return new Checked(exit, out.toString());
  }

  private static String uncounted(String text) {
    return text.replace("\r\n", "\n")
        .replaceAll("\\d+( received| failed| readings| times| of \\d+ readings)", "N$1")
        .replaceAll("of \\d+ readings", "of N readings")
        .replaceAll(" x \\d+", " x N")
        // a middle of more or fewer looks differs by a step of the chip
        .replaceAll("(\\d\\.\\d)\\d\\d\\d ", "$1NNN ")
        .replaceAll("(\\d\\.)\\d \\+/-", "$1N +/-")
        .replaceAll(" 0\\.\\d\\d ", " 0.NN ");
  }
}
