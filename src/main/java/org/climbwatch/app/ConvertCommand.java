package org.climbwatch.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.OutOfRange;
import org.climbwatch.thermocouple.ThermocoupleType;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One conversion, or one a line. */
@Command(
    name = "convert",
    description = {
      "Converts between thermocouple voltage and temperature by the ITS-90 reference functions.",
      "Prints the bare number. With neither value it reads lines emf_mv[,cold_junction_c] from"
          + " standard input and prints one temperature a line, and an empty line for an empty one."
    },
    footerHeading = "%nExamples%n",
    footer = {
      "  climbwatch convert --emf 40.0 --cold-junction 25",
      "      prints 992.9427",
      "  climbwatch convert --temperature 1000",
      "      prints 41.2756",
      "  climbwatch convert --type N < emf.csv"
    })
final class ConvertCommand implements Callable<Integer> {
  private static final String BYTE_ORDER_MARK = "\ufeff";

  @Spec private CommandSpec spec;

  @Option(
      names = "--type",
      paramLabel = "LETTER",
      defaultValue = "K",
      description = "Thermocouple type: B E J K N R S T (default K).")
  private String type;

  @Option(
      names = "--cold-junction",
      paramLabel = "C",
      defaultValue = "0",
      description = "Temperature of the terminals, degrees Celsius (default 0).")
  private double coldJunctionC;

  @ArgGroup private Value value;

  /** One of the two. */
  private static final class Value {
    @Option(names = "--emf", paramLabel = "MV", description = "Voltage at the terminals, mV.")
    private Optional<Double> emfMv = Optional.empty();

    @Option(names = "--temperature", paramLabel = "C", description = "Degrees Celsius.")
    private Optional<Double> temperatureC = Optional.empty();
  }

  @Override
  public Integer call() throws IOException {
    ThermocoupleType couple = couple();
    PrintWriter out = spec.commandLine().getOut();
    try {
      if (value == null) {
        lines(couple, out);
      } else if (value.emfMv.isPresent()) {
        out.println(number(ColdJunction.hotJunctionC(couple, value.emfMv.get(), coldJunctionC)));
      } else {
        out.println(
            number(ColdJunction.emfMv(couple, value.temperatureC.orElseThrow(), coldJunctionC)));
      }
    } catch (OutOfRange outside) {
      throw new Refusal(outside.getMessage());
    } finally {
      out.flush();
    }
    return Main.WELL;
  }

  private void lines(ThermocoupleType couple, PrintWriter out) throws IOException {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    int number = 0;
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      number++;
      String bare = number == 1 ? withoutMark(line) : line;
      // an empty line for an empty one, so that line n answers line n
      out.println(bare.isBlank() ? "" : number(converted(couple, bare, number)));
    }
  }

  /** Some editors and spreadsheets put a byte order mark before a file's first line. */
  private static String withoutMark(String line) {
    return line.startsWith(BYTE_ORDER_MARK) ? line.substring(1) : line;
  }

  private double converted(ThermocoupleType couple, String line, int number) {
    String[] cells = line.split(",", -1);
    try {
      if (cells.length > 2) {
        throw new NumberFormatException();
      }
      double emfMv = decimal(cells[0].strip());
      double coldC = cells.length == 2 ? decimal(cells[1].strip()) : coldJunctionC;
      return ColdJunction.hotJunctionC(couple, emfMv, coldC);
    } catch (OutOfRange outside) {
      throw new Refusal("line " + number + ": " + outside.getMessage());
    } catch (NumberFormatException notNumbers) {
      throw new Refusal(
          "line "
              + number
              + ": \""
              + line
              + "\" is not emf_mv or emf_mv,cold_junction_c; write for example 40.0,25");
    }
  }

  private ThermocoupleType couple() {
    for (ThermocoupleType each : ThermocoupleType.values()) {
      if (each.name().equalsIgnoreCase(type)) {
        return each;
      }
    }
    throw new Refusal("--type \"" + type + "\" is unknown; allowed: B E J K N R S T");
  }

  /** As Java reads it, less what only Java takes for a number: 1d, 0x1p3, NaN. */
  private static double decimal(String text) {
    if (!PlainNumbers.DECIMAL.matcher(text).matches()) {
      throw new NumberFormatException();
    }
    return Double.parseDouble(text);
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.4f", value);
    return text.equals("-0.0000") ? "0.0000" : text;
  }
}
