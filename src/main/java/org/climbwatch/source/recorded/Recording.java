package org.climbwatch.source.recorded;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/**
 * A recording read row by row as inputs of the watch.
 *
 * <p>Columns are found by their names in the first row, in any order: {@code elapsed_s} with {@code
 * emf_mv} and {@code cold_junction_c}, or with {@code temperature_c}. The raw signal is taken where
 * a row has both. {@code quality}, {@code note} and {@code action} are used when present; all other
 * columns are passed over. Every {@code resumed} begins a new boot, unless its note says that the
 * machine had stayed on.
 */
public final class Recording implements AutoCloseable {
  /** s: some thirty years. */
  private static final double LONGEST_S = 1e9;

  private final String file;
  private final Reader reader;
  private final CsvRows rows;
  private final Columns columns;
  private final RowInputs inputs;
  private final List<String> probes;
  private int boot;
  private long lastMillis = Long.MIN_VALUE;
  private String lastProbe = "";

  /**
   * Opens a recording and reads its first row.
   *
   * @param probes the configured names; with one, all readings get it, with several, each row must
   *     name one of them
   * @throws BadRecording when there is no such file, or it lacks the columns
   */
  public Recording(Path file, List<String> probes) {
    this.file = file.toString();
    reader = open(file);
    rows = new CsvRows(reader);
    try {
      advance();
      columns = Columns.of(rows.texts());
    } catch (BadRecording bad) {
      close();
      throw placed(bad);
    }
    inputs = new RowInputs(rows, columns, probes.get(0));
    this.probes = List.copyOf(probes);
  }

  /**
   * The next input; empty at the end.
   *
   * @throws BadRecording with file and line, when a row cannot be used
   */
  public Optional<Input> next() {
    try {
      while (advance()) {
        requireAllCells();
        String action = rows.text(columns.action());
        if (!action.equals("configured") && !action.equals("remarked")) {
          return Optional.of(input(action));
        }
      }
      return Optional.empty();
    } catch (BadRecording bad) {
      throw placed(bad);
    }
  }

  @Override
  public void close() {
    try {
      reader.close();
    } catch (IOException lost) {
      throw new UncheckedIOException(lost);
    }
  }

  private Input input(String action) {
    long millis = Math.round(inputs.number(columns.elapsed(), "elapsed_s", LONGEST_S) * 1000);
    if (action.equals("resumed") && !stayedOn()) {
      boot++;
    } else if (millis < lastMillis) {
      throw new BadRecording("elapsed_s goes back; put the rows in the order of time");
    }
    Moment at = new Moment(boot, millis);
    if (probes.size() > 1) {
      chooseProbe(action.isEmpty());
    }
    Input input = action.isEmpty() ? inputs.reading(at) : inputs.deed(action, at);
    if (input instanceof Input.Measured && probes.size() == 1 && columns.probe() >= 0) {
      requireOneProbe(millis);
    }
    lastMillis = millis;
    return input;
  }

  private boolean stayedOn() {
    return columns.note() >= 0 && rows.is(columns.note(), AlarmDeed.SAME_BOOT);
  }

  private void chooseProbe(boolean reading) {
    if (columns.probe() < 0 || rows.isEmpty(columns.probe())) {
      if (reading && rows.isEmpty(columns.note())) {
        throw new BadRecording(
            "no probe is named; with several probes each reading names its own: "
                + String.join(", ", probes));
      }
      inputs.of(probes.get(0));
    } else if (!rows.is(columns.probe(), inputs.probe())) {
      String name = rows.text(columns.probe());
      if (!probes.contains(name)) {
        throw new BadRecording(
            "probe \"" + name + "\" is not configured; allowed: " + String.join(", ", probes));
      }
      inputs.of(name);
    }
  }

  /** Two probes at one moment would make one curve that jumps between them. */
  private void requireOneProbe(long millis) {
    if (!rows.is(columns.probe(), lastProbe)) {
      String name = rows.text(columns.probe());
      if (millis == lastMillis && !lastProbe.isEmpty()) {
        throw new BadRecording(
            "readings of two probes at one time, "
                + lastProbe
                + " and "
                + name
                + "; keep the rows of one, or name a configuration with a [[probe]] for each");
      }
      lastProbe = name;
    }
  }

  private void requireAllCells() {
    if (rows.count() != columns.count()) {
      throw new BadRecording(
          "cells in this row: "
              + rows.count()
              + ", columns in the first row: "
              + columns.count()
              + "; write decimals with '.', quote texts that hold ',', and leave no cell"
              + " out");
    }
  }

  private static Reader open(Path file) {
    try {
      return Files.newBufferedReader(file, StandardCharsets.UTF_8);
    } catch (NoSuchFileException missing) {
      throw new BadRecording(file.toString(), "no such file");
    } catch (AccessDeniedException denied) {
      throw new BadRecording(file.toString(), "may not be read; check its permissions");
    } catch (IOException unreadable) {
      throw new BadRecording(file.toString(), "cannot be read: " + unreadable.getMessage());
    }
  }

  private boolean advance() {
    try {
      return rows.next();
    } catch (CharacterCodingException notText) {
      throw new BadRecording("this is not UTF-8 text; save the file as CSV in UTF-8");
    } catch (IOException unreadable) {
      throw new BadRecording("cannot be read: " + unreadable.getMessage());
    }
  }

  private BadRecording placed(BadRecording bad) {
    return new BadRecording(file + ":" + rows.rowLine(), bad.getMessage());
  }
}
