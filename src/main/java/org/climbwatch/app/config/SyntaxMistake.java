package org.climbwatch.app.config;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says what is wrong with a line that is not TOML, in words of our own: the parser's message may
 * quote the file, and a passphrase with a slip in it would stand in a log.
 */
final class SyntaxMistake {
  private static final Pattern HEADER = Pattern.compile("\\[\\[?[\\w.\\- \"']+]]?\\s*(#.*)?");
  private static final Pattern SETTING = Pattern.compile("([\\w.\\-]+)\\s*=\\s*(.*)");
  private static final Pattern COLON = Pattern.compile("([\\w.\\-]+)\\s*:.*");

  private final List<String> lines;

  SyntaxMistake(String text) {
    lines = text.lines().map(String::strip).toList();
  }

  /**
   * @param line from 1, as the parser counts; it may lie behind the last one
   */
  String message(int line) {
    return "not TOML: " + cause(line);
  }

  private String cause(int line) {
    if (line > lines.size()) {
      return "the file ends inside a text, list or table that is not closed; close it";
    }
    String text = lines.get(line - 1);
    if (text.startsWith("[")) {
      return header(text, line);
    }
    Matcher setting = SETTING.matcher(text);
    if (setting.matches()) {
      return setting(setting.group(1), setting.group(2), line);
    }
    Matcher colon = COLON.matcher(text);
    return colon.matches()
        ? colon.group(1) + " is followed by a colon; write " + colon.group(1) + " = and the value"
        : "this line is neither key = value nor a [header]; put # before a remark";
  }

  private String header(String text, int line) {
    if (!HEADER.matcher(text).matches()) {
      return "a table's header is not closed; write it as [kiln], for a probe as [[probe]]";
    }
    String name = text.replaceAll("\\s*#.*", "");
    for (int earlier = line - 1; earlier >= 1; earlier--) {
      if (lines.get(earlier - 1).replaceAll("\\s*#.*", "").equals(name)) {
        return name + " stands a second time, first on line " + earlier + "; join the two";
      }
    }
    return name + " does not fit what stands above it; give each table one header";
  }

  private String setting(String key, String value, int line) {
    int first = firstLineOf(key, line);
    if (first > 0) {
      return key + " stands a second time, first on line " + first + "; keep one";
    }
    if (value.isEmpty() || value.startsWith("#")) {
      return key + " has no value; write one, or put # before the line";
    }
    return key + " " + slip(value.charAt(0));
  }

  private static String slip(char begin) {
    if (begin == '"' || begin == '\'') {
      return "is a text with a slip; write it in one pair of quotation marks, a backslash in it as"
          + " \\\\, and nothing but a # remark behind it";
    }
    if (Character.isDigit(begin) || begin == '-' || begin == '+' || begin == '.') {
      return "is no number; write it bare, with a point and no unit, for example 1270 or 0.5, and a"
          + " text in quotation marks";
    }
    return begin == '['
        ? "is a list with a slip; write it as [\"one\", \"two\"]"
        : "has a value without quotation marks; a text stands in them, true, false and numbers"
            + " do not";
  }

  /** The line above, in the same table, that has the key too; 0 for none. */
  private int firstLineOf(String key, int line) {
    int first = 0;
    for (int i = line - 1; i >= 1 && !lines.get(i - 1).startsWith("["); i--) {
      Matcher setting = SETTING.matcher(lines.get(i - 1));
      if (setting.matches() && setting.group(1).equals(key)) {
        first = i;
      }
    }
    return first;
  }
}
