package org.climbwatch.source.recorded;

import java.util.List;

/**
 * Where each column stands; -1 where there is none.
 *
 * @param count how many the first row names
 */
record Columns(
    int elapsed,
    int probe,
    int temperature,
    int emf,
    int coldJunction,
    int quality,
    int phase,
    int note,
    int action,
    int samples,
    int spreadMv,
    int spreadC,
    int count) {
  private static final String WANTED =
      "the first row must name the columns elapsed_s and temperature_c, or elapsed_s, emf_mv and"
          + " cold_junction_c, separated by ','";

  /**
   * Finds the columns in the first row.
   *
   * @throws BadRecording when they do not make a recording, without the place
   */
  static Columns of(List<String> header) {
    List<String> names = header.stream().map(String::strip).toList();
    for (String name : names) {
      if (!name.isEmpty() && names.indexOf(name) != names.lastIndexOf(name)) {
        throw new BadRecording("two columns are named " + name + "; keep one");
      }
    }
    Columns columns =
        new Columns(
            names.indexOf("elapsed_s"),
            names.indexOf("probe"),
            names.indexOf("temperature_c"),
            names.indexOf("emf_mv"),
            names.indexOf("cold_junction_c"),
            names.indexOf("quality"),
            names.indexOf("phase"),
            names.indexOf("note"),
            names.indexOf("action"),
            names.indexOf("samples"),
            names.indexOf("spread_mv"),
            names.indexOf("spread_c"),
            names.size());
    if (!columns.enough()) {
      throw new BadRecording(complaint(names));
    }
    return columns;
  }

  private boolean enough() {
    return elapsed >= 0 && (temperature >= 0 || (emf >= 0 && coldJunction >= 0));
  }

  private static String complaint(List<String> names) {
    if (names.isEmpty()) {
      return "the file is empty; " + WANTED;
    }
    String only = names.get(0);
    if (names.size() == 1 && (only.contains(";") || only.contains("\t"))) {
      return "columns are separated by "
          + (only.contains(";") ? "';'" : "tabs")
          + "; save the file as CSV with ',' between columns and '.' as the decimal point";
    }
    return WANTED + "; it names " + String.join(", ", names);
  }
}
