package org.climbwatch.app.config;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of the file. Each question names a key, so that what nobody asked for is known to be
 * unknown. A wrong value is noted as a mistake and answered with the default.
 */
final class Section {
  private final String path;
  private final Optional<TomlTable> table;
  private final int ownLine;
  private final Mistakes mistakes;
  private final Set<String> asked = new LinkedHashSet<>();

  Section(String path, Optional<TomlTable> table, int ownLine, Mistakes mistakes) {
    this.path = path;
    this.table = table;
    this.ownLine = ownLine;
    this.mistakes = mistakes;
  }

  boolean present() {
    return table.isPresent();
  }

  int line() {
    return ownLine;
  }

  /** Whether the key is there, rightly or wrongly written. */
  boolean has(String key) {
    return value(key) != null;
  }

  /** A table inside this one. */
  Section section(String key) {
    Object value = value(key);
    if (value != null && !(value instanceof TomlTable)) {
      wrong(key, value, "is not a table", "write it as a header: [" + full(key) + "]");
      return new Section(full(key), Optional.empty(), line(key), mistakes);
    }
    return new Section(full(key), Optional.ofNullable((TomlTable) value), line(key), mistakes);
  }

  /** Tables in a row, written as [[key]]. */
  List<Section> sections(String key) {
    Object value = value(key);
    List<Section> sections = new ArrayList<>();
    if (value == null) {
      return sections;
    }
    if (value instanceof TomlTable one) {
      wrong(key, value, "is a single table", "write its header as [[" + full(key) + "]]");
      return List.of(new Section(full(key), Optional.of(one), line(key), mistakes));
    }
    if (!(value instanceof TomlArray array) || !holdsOnly(array, TomlTable.class)) {
      wrong(key, value, "is not a row of tables", "write it as a header: [[" + full(key) + "]]");
      return sections;
    }
    for (int i = 0; i < array.size(); i++) {
      int line = array.inputPositionOf(i).line();
      sections.add(new Section(full(key), Optional.of(array.getTable(i)), line, mistakes));
    }
    return sections;
  }

  double number(String key, double otherwise, double low, double high) {
    return optionalNumber(key, low, high).orElse(otherwise);
  }

  OptionalDouble optionalNumber(String key, double low, double high) {
    Object value = value(key);
    if (value == null) {
      return OptionalDouble.empty();
    }
    String allowed = "allowed: " + Shown.plain(low) + " to " + Shown.plain(high);
    if (!(value instanceof Long || value instanceof Double)) {
      wrong(
          key,
          value,
          "is not a number",
          "write it bare, without unit or quotation marks; " + allowed);
      return OptionalDouble.empty();
    }
    double number = ((Number) value).doubleValue();
    if (!(number >= low && number <= high)) {
      wrong(key, value, "is out of range", allowed);
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(number);
  }

  long whole(String key, long otherwise, long low, long high) {
    Object value = value(key);
    if (value == null) {
      return otherwise;
    }
    String allowed = "allowed: " + low + " to " + high;
    if (!(value instanceof Long)) {
      wrong(key, value, "is not a whole number", allowed);
      return otherwise;
    }
    long number = (Long) value;
    if (number < low || number > high) {
      wrong(key, value, "is out of range", allowed);
      return otherwise;
    }
    return number;
  }

  /** A whole number out of a few. */
  long oneOf(String key, long otherwise, List<Integer> allowed) {
    Object value = value(key);
    if (value == null) {
      return otherwise;
    }
    if (!(value instanceof Long) || !allowed.stream().anyMatch(each -> value.equals((long) each))) {
      String list = allowed.stream().map(String::valueOf).collect(Collectors.joining(", "));
      wrong(key, value, "is not one of the choices", "allowed: " + list);
      return otherwise;
    }
    return (Long) value;
  }

  boolean flag(String key, boolean otherwise) {
    Object value = value(key);
    if (value == null) {
      return otherwise;
    }
    if (!(value instanceof Boolean)) {
      wrong(
          key, value, "is neither true nor false", "write true or false, without quotation marks");
      return otherwise;
    }
    return (Boolean) value;
  }

  Optional<String> text(String key) {
    Object value = value(key);
    if (value == null) {
      return Optional.empty();
    }
    if (!(value instanceof String)) {
      wrong(key, value, "is not a text", "write it in quotation marks");
      return Optional.empty();
    }
    if (((String) value).isBlank()) {
      wrong(key, value, "is blank", "write a text, or leave the key out");
      return Optional.empty();
    }
    if (((String) value).chars().anyMatch(Character::isISOControl)) {
      wrong(key, value, "holds a line break or another control character", "take it out");
      return Optional.empty();
    }
    return Optional.of((String) value);
  }

  /** A day, as TOML writes it. */
  Optional<LocalDate> date(String key) {
    Object value = value(key);
    if (value == null) {
      return Optional.empty();
    }
    if (!(value instanceof LocalDate)) {
      wrong(key, value, "is not a day", "write it without quotation marks, as 2026-10-01");
      return Optional.empty();
    }
    return Optional.of((LocalDate) value);
  }

  /** A file or folder. */
  Optional<Path> path(String key) {
    Optional<String> text = text(key);
    try {
      return text.map(Path::of);
    } catch (InvalidPathException unknownLetters) {
      wrong(key, text.orElse(""), "cannot name a file here", "use plain letters");
      return Optional.empty();
    }
  }

  List<String> texts(String key) {
    Object value = value(key);
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof TomlArray array) || !holdsOnly(array, String.class)) {
      wrong(key, value, "is not a list of texts", "write it as [\"one\", \"two\"]");
      return List.of();
    }
    return array.toList().stream().map(String::valueOf).toList();
  }

  /** Numbers in a row. */
  List<Double> numbers(String key) {
    Object value = value(key);
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof TomlArray array)
        || !array.toList().stream().allMatch(each -> each instanceof Number)) {
      wrong(key, value, "is not a list of numbers", "write it as [32767, -32768]");
      return List.of();
    }
    return array.toList().stream().map(each -> ((Number) each).doubleValue()).toList();
  }

  String choice(String key, String otherwise, List<String> allowed) {
    Optional<String> chosen = text(key);
    if (chosen.isPresent() && !allowed.contains(chosen.get())) {
      wrong(key, chosen.get(), "is not one of the choices", "allowed: " + Shown.list(allowed));
      return otherwise;
    }
    return chosen.orElse(otherwise);
  }

  /** Notes that a key of this table is missing, or that it must not be there. */
  void mistake(String key, String what) {
    mistakes.add(line(key), full(key) + " " + what);
  }

  /** Notes a wrong value: what it is, and what is allowed or to be done. */
  void wrong(String key, Object seen, String what, String advice) {
    mistakes.add(line(key), full(key) + Shown.value(key, seen) + " " + what + "; " + advice);
  }

  /** To be called when all known keys have been asked for. */
  void refuseTheRest() {
    if (table.isEmpty()) {
      return;
    }
    for (String key : table.get().keySet()) {
      if (!asked.contains(key)) {
        mistakes.add(line(key), full(key) + " is an unknown key; " + advice(key));
      }
    }
  }

  private String advice(String key) {
    String meant =
        Distance.nearest(key, asked).map(near -> "did you mean " + near + "? ").orElse("");
    return meant + "known here: " + String.join(", ", asked);
  }

  private Object value(String key) {
    asked.add(key);
    return table.map(t -> t.get(List.of(key))).orElse(null);
  }

  private int line(String key) {
    TomlPosition position = table.map(t -> t.inputPositionOf(List.of(key))).orElse(null);
    return position == null ? ownLine : position.line();
  }

  private static boolean holdsOnly(TomlArray array, Class<?> kind) {
    return array.toList().stream().allMatch(kind::isInstance);
  }

  private String full(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }
}
