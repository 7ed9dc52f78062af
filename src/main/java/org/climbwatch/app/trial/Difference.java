package org.climbwatch.app.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * One alarm, as it was and as it would be.
 *
 * @param was as it was raised; empty for a new one
 * @param would as the settings under trial raise it; empty for one that is gone
 */
public record Difference(Optional<Fired> was, Optional<Fired> would) {
  /** Two occurrences further apart are not the same one, unless one stood when the other came. */
  private static final long SAME_WITHIN_MS = 3_600_000;

  /** How they differ. */
  public enum Verdict {
    SAME,
    EARLIER,
    LATER,
    NEW,
    GONE;

    /** The lower-case word of table and CSV. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  public Difference {
    if (was.isEmpty() && would.isEmpty()) {
      throw new IllegalArgumentException("one of the two must be there");
    }
  }

  /** The alarm's word. */
  public String alarm() {
    return was.or(() -> would).orElseThrow().alarm();
  }

  /**
   * ms by which it would come later than it did; negative when earlier, 0 when only one is there.
   */
  public long shiftMs() {
    return was.isPresent() && would.isPresent()
        ? would.get().elapsedMs() - was.get().elapsedMs()
        : 0;
  }

  /** How they differ; what is the same to the second is the same. */
  public Verdict verdict() {
    if (was.isEmpty()) {
      return Verdict.NEW;
    }
    if (would.isEmpty()) {
      return Verdict.GONE;
    }
    if (Math.abs(shiftMs()) < 1000) {
      return Verdict.SAME;
    }
    return shiftMs() < 0 ? Verdict.EARLIER : Verdict.LATER;
  }

  /** Pairs what was with what would be, alarm by alarm in the order of time. */
  public static List<Difference> between(List<Fired> was, List<Fired> would) {
    TreeSet<String> alarms = new TreeSet<>();
    was.forEach(fired -> alarms.add(fired.alarm()));
    would.forEach(fired -> alarms.add(fired.alarm()));
    List<Difference> differences = new ArrayList<>();
    for (String alarm : alarms) {
      pair(of(alarm, was), of(alarm, would), differences);
    }
    differences.sort(java.util.Comparator.comparingLong(Difference::firstMs));
    return differences;
  }

  private long firstMs() {
    return Math.min(
        was.map(Fired::elapsedMs).orElse(Long.MAX_VALUE),
        would.map(Fired::elapsedMs).orElse(Long.MAX_VALUE));
  }

  private static List<Fired> of(String alarm, List<Fired> all) {
    return all.stream().filter(fired -> fired.alarm().equals(alarm)).toList();
  }

  private static void pair(List<Fired> was, List<Fired> would, List<Difference> into) {
    int i = 0;
    int j = 0;
    while (i < was.size() || j < would.size()) {
      long wasMs = i < was.size() ? was.get(i).elapsedMs() : Long.MAX_VALUE;
      long wouldMs = j < would.size() ? would.get(j).elapsedMs() : Long.MAX_VALUE;
      boolean both = i < was.size() && j < would.size();
      if (both && sameOne(was.get(i), would.get(j))) {
        into.add(new Difference(Optional.of(was.get(i++)), Optional.of(would.get(j++))));
      } else if (wasMs < wouldMs) {
        into.add(new Difference(Optional.of(was.get(i++)), Optional.empty()));
      } else {
        into.add(new Difference(Optional.empty(), Optional.of(would.get(j++))));
      }
    }
  }

  private static boolean sameOne(Fired one, Fired other) {
    return Math.abs(one.elapsedMs() - other.elapsedMs()) <= SAME_WITHIN_MS
        || one.stoodAt(other.elapsedMs())
        || other.stoodAt(one.elapsedMs());
  }
}
