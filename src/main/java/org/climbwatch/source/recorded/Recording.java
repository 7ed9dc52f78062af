package org.climbwatch.source.recorded;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;

/**
 * A recording read row by row as inputs of the watch.
 *
 * <p>Columns are found by their names in the first row: {@code elapsed_s} with {@code emf_mv} and
 * {@code cold_junction_c}, or with {@code temperature_c}. The raw signal is taken where a row has
 * both. {@code quality} and {@code action} are used when present; all other columns are passed
 * over.
 */
public final class Recording implements AutoCloseable {
  private final String file;
  private final String probe;
  private final BufferedReader reader;
  private final CsvRows rows;
  private final Columns columns;
  private int boot;
  private long lastMillis = Long.MIN_VALUE;

  /**
   * Opens a recording and reads its first row.
   *
   * @param probe the name that its readings are to carry
   * @throws BadRecording when there is no such file, or it lacks the columns
   */
  public Recording(Path file, String probe) {
    this.file = file.toString();
    this.probe = probe;
    try {
      reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
    } catch (NoSuchFileException missing) {
      throw new BadRecording(this.file, "no such file");
    } catch (IOException unreadable) {
      throw new BadRecording(this.file, "cannot be read: " + unreadable.getMessage());
    }
    rows = new CsvRows(reader);
    columns = new Columns(this.file, row());
  }

  /** The next input; empty at the end. */
  public Optional<Input> next() {
    List<String> cells = row();
    return cells.isEmpty() ? Optional.empty() : Optional.of(input(cells));
  }

  @Override
  public void close() {
    try {
      reader.close();
    } catch (IOException lost) {
      throw new UncheckedIOException(lost);
    }
  }

  private List<String> row() {
    try {
      return rows.next();
    } catch (MalformedInputException notText) {
      throw bad("not UTF-8 text; save the file as CSV UTF-8");
    } catch (IOException unreadable) {
      throw bad("cannot be read: " + unreadable.getMessage());
    } catch (BadRecording open) {
      throw new BadRecording(file, open.getMessage());
    }
  }

  private Input input(List<String> cells) {
    String action = cell(cells, columns.action);
    long millis = Math.round(number(cells, columns.elapsed, "elapsed_s") * 1000);
    if (millis < lastMillis) {
      throw bad("elapsed_s goes back; rows must be in the order of time");
    }
    lastMillis = millis;
    return action.isEmpty()
        ? new Input.Measured(reading(cells, new Moment(boot, millis)))
        : deed(cells, action, millis);
  }

  private Reading reading(List<String> cells, Moment at) {
    String quality = cell(cells, columns.quality);
    if (!quality.isEmpty() && !quality.equals("good")) {
      return Reading.faulty(at, probe, fault(quality));
    }
    String cold = cell(cells, columns.coldJunction);
    if (!cell(cells, columns.emf).isEmpty() && !cold.isEmpty()) {
      return Reading.emf(
          at,
          probe,
          number(cells, columns.emf, "emf_mv"),
          number(cells, columns.coldJunction, "cold_junction_c"));
    }
    if (cell(cells, columns.temperature).isEmpty()) {
      return Reading.faulty(at, probe, Fault.NO_ANSWER);
    }
    OptionalDouble coldJunctionC =
        cold.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(number(cells, columns.coldJunction, "cold_junction_c"));
    double temperatureC = number(cells, columns.temperature, "temperature_c");
    return Reading.linearised(at, probe, temperatureC, coldJunctionC);
  }

  private Input deed(List<String> cells, String action, long millis) {
    if (action.equals("resumed")) {
      boot++;
    }
    Moment at = new Moment(boot, millis);
    String note = unescaped(cell(cells, columns.note));
    return switch (action) {
      case "began" -> new Input.Began(at, note);
      case "ended" -> new Input.Ended(at);
      case "declared" -> new Input.Declared(at, phase(cell(cells, columns.phase)));
      case "noted" -> new Input.Noted(at, note);
      case "acknowledged" -> acknowledged(at, note);
      case "resumed" -> new Input.Resumed(at);
      default ->
          throw bad(
              "action \""
                  + action
                  + "\" is unknown; allowed: began, ended, declared, noted, acknowledged, resumed,"
                  + " or empty");
    };
  }

  /** The note of an acknowledgement is "kind: who". */
  private static Input acknowledged(Moment at, String note) {
    int colon = note.indexOf(':');
    return colon < 0
        ? new Input.Acknowledged(at, note.strip(), "")
        : new Input.Acknowledged(
            at, note.substring(0, colon).strip(), note.substring(colon + 1).strip());
  }

  private Fault fault(String quality) {
    try {
      return Fault.ofWord(quality);
    } catch (IllegalArgumentException unknown) {
      throw bad(unknown.getMessage());
    }
  }

  private Phase phase(String word) {
    try {
      return Phase.ofWord(word);
    } catch (IllegalArgumentException unknown) {
      throw bad(unknown.getMessage());
    }
  }

  private double number(List<String> cells, int column, String name) {
    String cell = cell(cells, column).strip();
    try {
      double value = Double.parseDouble(cell);
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException notANumber) {
      // told below, together with what is not finite
    }
    throw bad(
        name
            + " = \""
            + cell
            + "\" is not a number; write it with '.' as the decimal point, for example 1004.5");
  }

  private static String cell(List<String> cells, int column) {
    return column < 0 || column >= cells.size() ? "" : cells.get(column);
  }

  private static String unescaped(String note) {
    return note.length() > 1 && note.charAt(0) == '\'' ? note.substring(1) : note;
  }

  private BadRecording bad(String what) {
    return new BadRecording(file + ":" + (rows == null ? 1 : rows.rowLine()), what);
  }

  /** Where each column stands; -1 where there is none. */
  private static final class Columns {
    private final int elapsed;
    private final int temperature;
    private final int emf;
    private final int coldJunction;
    private final int quality;
    private final int phase;
    private final int note;
    private final int action;

    Columns(String file, List<String> header) {
      List<String> names = header.stream().map(name -> name.replace("\uFEFF", "").strip()).toList();
      elapsed = names.indexOf("elapsed_s");
      temperature = names.indexOf("temperature_c");
      emf = names.indexOf("emf_mv");
      coldJunction = names.indexOf("cold_junction_c");
      quality = names.indexOf("quality");
      phase = names.indexOf("phase");
      note = names.indexOf("note");
      action = names.indexOf("action");
      boolean enough = elapsed >= 0 && (temperature >= 0 || (emf >= 0 && coldJunction >= 0));
      if (!enough) {
        throw new BadRecording(file + ":1", complaint(names));
      }
    }

    private static String complaint(List<String> names) {
      String wanted =
          "the first row must name elapsed_s and temperature_c, or elapsed_s, emf_mv and"
              + " cold_junction_c";
      if (names.isEmpty()) {
        return "the file is empty; " + wanted;
      }
      return names.size() == 1 && names.get(0).contains(";")
          ? "columns are separated by ';'; save it as CSV with ',' and '.' decimals; " + wanted
          : wanted + "; found " + String.join(", ", names);
    }
  }
}
