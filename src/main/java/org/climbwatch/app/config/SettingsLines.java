package org.climbwatch.app.config;

import java.time.Duration;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.climbwatch.alarm.Delays;

/**
 * Lines of {@code key=value} taken one by one: a line that cannot be read, that stands twice or
 * that nobody asks for is refused, for a replay under other settings would tell another story.
 */
final class SettingsLines {
  private final Map<String, String> values = new TreeMap<>();

  SettingsLines(String text) {
    for (String line : text.split("\n")) {
      int equals = line.indexOf('=');
      if (equals < 0) {
        throw unreadable("line \"" + line + "\" has no '='");
      }
      String key = line.substring(0, equals);
      if (values.put(key, line.substring(equals + 1)) != null) {
        throw unreadable("\"" + key + "\" stands twice");
      }
    }
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  String text(String key, String otherwise) {
    return read(key, otherwise, "text", SettingsLines::unescaped);
  }

  double number(String key, double otherwise) {
    return read(key, otherwise, "number", Double::valueOf);
  }

  OptionalDouble optionalNumber(String key) {
    return has(key) ? OptionalDouble.of(number(key, 0)) : OptionalDouble.empty();
  }

  boolean flag(String key, boolean otherwise) {
    return read(key, otherwise, "true or false", SettingsLines::trueOrFalse);
  }

  <T> T word(String key, T otherwise, Function<String, T> ofWord) {
    return read(key, otherwise, "known word", ofWord);
  }

  /** To the millisecond. */
  Delays delays(String rule, Delays otherwise) {
    return new Delays(
        millis(rule + ".on_delay_ms", otherwise.on()),
        millis(rule + ".off_delay_ms", otherwise.off()));
  }

  /** To be called when all known keys have been taken. */
  void refuseTheRest() {
    if (!values.isEmpty()) {
      throw unreadable("unknown settings " + values.keySet() + "; a later version wrote them");
    }
  }

  /** The value on one line. */
  static String escaped(String text) {
    return text.replace("\\", "\\\\").replace("\n", "\\n");
  }

  Duration millis(String key, Duration otherwise) {
    return read(key, otherwise, "number of ms", value -> Duration.ofMillis(Long.parseLong(value)));
  }

  <T> T read(String key, T otherwise, String kind, Function<String, T> reader) {
    String value = values.remove(key);
    try {
      return value == null ? otherwise : reader.apply(value);
    } catch (IllegalArgumentException wrong) {
      throw unreadable(key + " = \"" + value + "\" is no " + kind);
    }
  }

  private static boolean trueOrFalse(String value) {
    if (value.equals("true") || value.equals("false")) {
      return value.equals("true");
    }
    throw new IllegalArgumentException(value);
  }

  private static String unescaped(String text) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\\') {
        i++;
        if (i == text.length() || "n\\".indexOf(text.charAt(i)) < 0) {
          throw new IllegalArgumentException(text);
        }
        c = text.charAt(i) == 'n' ? '\n' : '\\';
      }
      plain.append(c);
    }
    return plain.toString();
  }

  private static IllegalArgumentException unreadable(String why) {
    return new IllegalArgumentException("settings in the record: " + why);
  }
}
