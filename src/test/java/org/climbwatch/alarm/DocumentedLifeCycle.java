package org.climbwatch.alarm;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The table of states and turns in {@code docs/alarms.md}. */
final class DocumentedLifeCycle {
  /** One cell, for alarms that latch or for the others. */
  record Pair(AlarmState from, Turn turn, boolean latches, AlarmState next) {
    @Override
    public String toString() {
      return (latches ? "latching " : "") + from.word() + ", " + turn + " -> " + next.word();
    }
  }

  private DocumentedLifeCycle() {}

  static List<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    List<Turn> turns = new ArrayList<>();
    for (String line : lines()) {
      List<String> cells =
          Arrays.stream(line.substring(1).split("\\|")).map(String::strip).toList();
      if (cells.get(0).equals("from")) {
        cells.stream().skip(1).map(DocumentedLifeCycle::turn).forEach(turns::add);
      } else if (!turns.isEmpty() && cells.size() == turns.size() + 1 && !line.contains("---")) {
        AlarmState from = AlarmState.ofWord(cells.get(0));
        for (int i = 0; i < turns.size(); i++) {
          String cell = cells.get(i + 1);
          pairs.add(new Pair(from, turns.get(i), false, plain(from, cell)));
          pairs.add(new Pair(from, turns.get(i), true, latching(from, cell)));
        }
      }
    }
    return pairs;
  }

  private static Turn turn(String words) {
    return Turn.valueOf(words.toUpperCase(Locale.ROOT).replace(' ', '_'));
  }

  private static AlarmState plain(AlarmState from, String cell) {
    return cell.equals("–") ? from : AlarmState.ofWord(cell.replaceFirst(" \\(.*", ""));
  }

  private static AlarmState latching(AlarmState from, String cell) {
    int open = cell.indexOf('(');
    return open < 0
        ? plain(from, cell)
        : AlarmState.ofWord(cell.substring(open + 1, cell.length() - 1));
  }

  private static List<String> lines() {
    try {
      return Files.readAllLines(Path.of("docs/alarms.md")).stream()
          .filter(line -> line.startsWith("|"))
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
