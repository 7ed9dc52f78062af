package org.climbwatch.app.config;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The mistakes of one file, told together and in the order of its lines. */
final class Mistakes {
  private final String file;
  private final List<Mistake> all = new ArrayList<>();

  private record Mistake(int line, String what) {}

  Mistakes(String file) {
    this.file = file;
  }

  /** Line 0 stands for the file as a whole. */
  void add(int line, String what) {
    all.add(new Mistake(line, what));
  }

  void throwIfAny() {
    if (!all.isEmpty()) {
      throw new ConfigurationProblem(
          all.stream()
              .sorted(Comparator.comparingInt(Mistake::line))
              .map(m -> file + (m.line() > 0 ? ":" + m.line() : "") + ": " + m.what())
              .toList());
    }
  }
}
