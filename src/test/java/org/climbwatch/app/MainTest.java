package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** What a person gets on the command line: results on one stream, a word of help on the other. */
class MainTest {
  @TempDir Path folder;

  private record Finished(int exit, String out, String err) {}

  @Test
  void helpNamesEveryCommandTheCautionAndTheExitCodes() {
    Finished help = run("--help");

    assertThat(help.exit()).isZero();
    assertThat(help.out())
        .contains("run", "check", "convert", "replay", "simulate", "firings", "export")
        .contains("no safety device")
        .contains("Exit codes: 0 done");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "run", "check", "convert", "replay", "simulate", "firings", "export"})
  void helpFitsATerminalOfEightyColumnsAndIsPlainAscii(String command) {
    Finished help = command.isEmpty() ? run("--help") : run(command, "--help");

    assertThat(help.err()).isEmpty();
    assertThat(help.out().lines())
        .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(help.out()).matches("[\\x20-\\x7e\\r\\n]+");
  }

  @ParameterizedTest
  @ValueSource(strings = {"run", "check", "convert", "replay", "simulate", "firings", "export"})
  void helpOfACommandHasUsageExampleAndExitCodes(String command) {
    assertThat(run(command, "--help").out())
        .startsWith("Usage: java -jar climbwatch.jar " + command)
        .containsPattern("Examples?\\R  java -jar climbwatch.jar " + command)
        .contains("Exit codes", "internal fault");
  }

  @Test
  void versionIsAskedForByItsOption() {
    assertThat(run("--version").out()).startsWith("climbwatch ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''                        | a COMMAND is missing; see java -jar climbwatch.jar --help",
        "bogus                     | \"bogus\" is no command; there are run, check, convert, replay,"
            + " simulate, firings, export; see java -jar climbwatch.jar --help",
        "convert --emf x           | \"x\" is no number; write it with '.' as in 40.0;"
            + " see java -jar climbwatch.jar convert --help",
        "convert --emf 1 --temperature 2 | --emf=MV, --temperature=C: give one of them; see",
        "convert --type Q --emf 1  | --type \"Q\" is unknown; allowed: B E J K N R S T",
        "convert --emf 99          | 99.0 mV is outside Type K: allowed -6.458 to 54.886 mV",
        "convert --emf NaN         | \"NaN\" is no number",
        "convert --temperature 1400| 1400.0 °C is outside Type K",
        "simulate --out .          | --out . is a folder; name a file in it",
        "check --seconds 0         | --seconds 0 is out of range; allowed: 1 to 600",
        "check --seconds x         | Invalid value for option '--seconds': \"x\" is no whole number, or too large a one; see",
        "simulate --seed 1.5       | Invalid value for option '--seed': \"1.5\" is no whole number, or too large a one; see",
        "simulate --rest 1,5       | Invalid value for option '--rest': \"1,5\" is no number; write it",
        "check --config none.toml  | none.toml: no such file; copy config/climbwatch.toml there",
        "run --listen 8080         | --listen \"8080\" is no HOST:PORT; write for example",
        "run --listen 0.0.0.0:0    | set server.passphrase",
        "replay                    | name recordings, or --firings of the journal, and not both",
        "replay a.csv --firings all | name recordings, or --firings of the journal, and not both",
        "replay a.csv b.csv --format events | --format events is for one recording",
        "replay a.csv --format x   | --format \"x\" is unknown; allowed: events, table, csv",
        "replay --firings all --against a.toml | --against is for recordings",
        "replay none.csv           | none.csv: no such file",
        "simulate --fault fire     | unknown fault \"fire\"; allowed: none, stall",
        "export                    | Missing required parameter: 'FIRING'",
        "export latest --format xml| --format \"xml\" is unknown; allowed: csv, json",
        "export latest --data none | there is no journal none/journal.sqlite; name the --data folder"
      })
  void wrongUseEndsWithTwoAndOneLineThatSaysWhat(String arguments, String what) {
    Finished wrong = run(arguments.isEmpty() ? new String[0] : arguments.split(" +"));

    assertThat(wrong.exit()).isEqualTo(2);
    assertThat(wrong.out()).isEmpty();
    assertThat(wrong.err()).contains(what);
    assertThat(wrong.err().lines()).hasSize(1);
  }

  @Test
  void allMistakesOfAConfigurationAreTold() throws Exception {
    Path file = folder.resolve("bad.toml");
    Files.writeString(file, "[kiln]\nname = 5\n[[probe]]\nsource = \"model\"\nx = 1\n");

    Finished wrong = run("check", "--config", file.toString());

    assertThat(wrong.exit()).isEqualTo(2);
    assertThat(wrong.err().lines())
        .satisfiesExactly(
            first -> assertThat(first).startsWith(file + ":2: kiln.name = 5 "),
            second -> assertThat(second).startsWith(file + ":5: probe.x "));
  }

  /** NIST SRD 60, table of Type K, printed to 0.001 mV: 0.02 °C near 500 and 1000 °C. */
  @ParameterizedTest
  @CsvSource({
    "--temperature -200, -5.891, 0.0005",
    "--temperature 500, 20.644, 0.0005",
    "--temperature 1000, 41.276, 0.0005",
    "--emf 20.644, 500, 0.02",
    "--emf 41.276, 1000, 0.02"
  })
  void convertPrintsTheBareNumberWithFourDecimals(String arguments, double table, double within) {
    Finished converted = run(("convert " + arguments).split(" "));

    assertThat(converted.exit()).isZero();
    assertThat(converted.err()).isEmpty();
    assertThat(converted.out()).matches("-?[0-9]+\\.[0-9]{4}\\R");
    assertThat(Double.parseDouble(converted.out())).isCloseTo(table, within(within));
  }

  @ParameterizedTest
  @ValueSource(strings = {"--temperature -0.0000001", "--emf -0.0000001"})
  void convertPrintsNoSignBeforeZero(String arguments) {
    assertThat(run(("convert " + arguments).split(" ")).out().strip()).isEqualTo("0.0000");
  }

  @Test
  void convertReadsLinesEachWithItsOwnColdJunctionOrTheOneOfTheOption() {
    Finished converted =
        runWith("40,25\r\n\n40.0\n+.4e2 , 25\n", "convert", "--cold-junction", "0");

    assertThat(converted.exit()).as(converted.err()).isZero();
    List<String> lines = converted.out().lines().toList();
    assertThat(lines).hasSize(4);
    assertThat(lines.get(1)).as("line 2 answers line 2, which is empty").isEmpty();
    assertThat(lines.get(3)).isEqualTo(lines.get(0));
    assertThat(converted.out())
        .startsWith(run("convert", "--emf", "40", "--cold-junction", "25").out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"forty", "40,25,1", "40,", ",25", "40;25", "NaN", "1d", "0x1p3", "99"})
  void badLineIsNamedAndWhatCameBeforeItStaysPrinted(String bad) {
    Finished converted = runWith("0\n\n0,0\n" + bad + "\n0\n", "convert");

    assertThat(converted.exit()).isEqualTo(2);
    assertThat(converted.out().lines()).containsExactly("0.0000", "", "0.0000");
    assertThat(converted.err()).startsWith("line 4: ");
    assertThat(converted.err().lines()).hasSize(1);
  }

  @Test
  void convertPassesOverTheByteOrderMarkOfTheFirstLine() {
    Finished converted = runWith("\ufeff0\n0,0\n", "convert");

    assertThat(converted.exit()).as(converted.err()).isZero();
    assertThat(converted.out().lines()).containsExactly("0.0000", "0.0000");
    assertThat(runWith("0\n\ufeff0\n", "convert").err()).startsWith("line 2: ");
  }

  /** A daemon that cannot be has kept no record, so it leaves none behind. */
  @Test
  void refusedAddressLeavesNoJournal() throws Exception {
    try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      Path data = folder.resolve("data");
      String address = "127.0.0.1:" + other.getLocalPort();

      Finished refused = run("run", "--listen", address, "--data", data.toString());

      assertThat(refused.exit()).isEqualTo(2);
      assertThat(refused.err()).startsWith("cannot listen on " + address).contains("--listen");
      assertThat(refused.err().lines()).hasSize(1);
      assertThat(data).doesNotExist();
    }
  }

  @Test
  void recordingThatIsMissingLeavesNoJournal() throws Exception {
    Path config = folder.resolve("played.toml");
    Files.writeString(
        config,
        "[[probe]]\nsource = \"recording\"\n[probe.recording]\nfile = \"%s\"\n"
            .formatted(folder.resolve("none.csv")));
    Path data = folder.resolve("data");

    Finished refused =
        run(
            "run",
            "--listen",
            "127.0.0.1:0",
            "--config",
            config.toString(),
            "--data",
            data.toString());

    assertThat(refused.exit()).isEqualTo(2);
    assertThat(refused.err()).contains("none.csv: no such file");
    assertThat(data).doesNotExist();
  }

  @Test
  void internalFaultIsOneLineAndItsTraceIsForWhoAsks() {
    Finished brief = broken("broken");
    Finished whole = broken("broken", "--verbose");

    assertThat(brief.exit()).isEqualTo(70);
    assertThat(brief.err().lines()).hasSize(1);
    assertThat(brief.err())
        .startsWith("internal fault in MainTest.java:")
        .contains("the roof fell in", "report it", "--verbose");
    assertThat(whole.exit()).isEqualTo(70);
    assertThat(whole.err()).contains("the roof fell in", "\tat org.climbwatch.");
  }

  @CommandLine.Command(name = "broken")
  private static final class Broken implements Callable<Integer> {
    @Override
    public Integer call() {
      throw new IllegalStateException("the roof\nfell in");
    }
  }

  private static Finished broken(String... arguments) {
    StringWriter err = new StringWriter();
    CommandLine commands = Main.commandLine().addSubcommand(new Broken());
    int exit = commands.setErr(new PrintWriter(err)).execute(arguments);
    return new Finished(exit, "", err.toString());
  }

  private static Finished run(String... arguments) {
    return runWith("", arguments);
  }

  private static Finished runWith(String input, String... arguments) {
    InputStream usual = System.in;
    System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
    try {
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      CommandLine commands =
          Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
      int exit = commands.execute(arguments);
      return new Finished(exit, out.toString(), err.toString());
    } finally {
      System.setIn(usual);
    }
  }
}
