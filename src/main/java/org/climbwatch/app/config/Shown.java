package org.climbwatch.app.config;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Values of the file as a message shows them: on one line, and a passphrase never. */
final class Shown {
  private Shown() {}

  /** With its equals sign; a table or a list has nothing to show. */
  static String value(String key, Object seen) {
    if (seen instanceof TomlTable || seen instanceof TomlArray) {
      return "";
    }
    if (key.equals("passphrase")) {
      return " (not shown)";
    }
    return " = " + (seen instanceof String ? "\"" + escaped((String) seen) + "\"" : bare(seen));
  }

  /** Without an exponent and trailing zeros. */
  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  static String list(List<String> words) {
    return "\"" + String.join("\", \"", words) + "\"";
  }

  private static String bare(Object seen) {
    boolean plain = seen instanceof Double && Double.isFinite((Double) seen);
    return plain ? plain((Double) seen) : String.valueOf(seen);
  }

  private static String escaped(String text) {
    return text.chars()
        .mapToObj(c -> Character.isISOControl(c) ? String.format("\\u%04x", c) : "" + (char) c)
        .collect(Collectors.joining());
  }
}
