package org.climbwatch.app;

import java.util.function.Function;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Numbers of the command line as they stand in a CSV, and refusals in plain words. */
final class PlainNumbers {
  /** Java itself would take 0x1p3 and 5f, too. */
  static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");

  private PlainNumbers() {}

  /** Has all options of a command and its subcommands read by these. */
  static void register(CommandLine commands) {
    ITypeConverter<Double> decimal =
        text -> {
          if (!DECIMAL.matcher(text).matches()) {
            throw new TypeConversionException(
                "\"" + text + "\" is no number; write it with '.' as in 40.0");
          }
          return Double.valueOf(text);
        };
    commands.registerConverter(Double.class, decimal);
    commands.registerConverter(double.class, decimal);
    commands.registerConverter(Integer.class, text -> whole(text, Integer::valueOf));
    commands.registerConverter(int.class, text -> whole(text, Integer::valueOf));
    commands.registerConverter(Long.class, text -> whole(text, Long::valueOf));
    commands.registerConverter(long.class, text -> whole(text, Long::valueOf));
  }

  private static <T> T whole(String text, Function<String, T> read) {
    try {
      return read.apply(text);
    } catch (NumberFormatException none) {
      throw new TypeConversionException("\"" + text + "\" is no whole number, or too large a one");
    }
  }
}
