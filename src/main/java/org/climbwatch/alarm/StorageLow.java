package org.climbwatch.alarm;

import java.util.Locale;
import java.util.OptionalLong;

/**
 * The disk of the record will be full before long. Applies in every phase.
 *
 * @param leastFreeMb 10⁶ bytes that should be free
 */
public record StorageLow(Delays delays, double leastFreeMb) implements Rule {
  /**
   * The record grows by 0.2 MB an hour for each probe (DEVELOPERS.md). What fills a disk is
   * something else, and that has to be seen in time.
   */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.STORAGE_LOW)
          .number("least_free_mb", 200, 1, 1_000_000)
          .delays(30, 60)
          .makes(set -> new StorageLow(set.delays(), set.number("least_free_mb")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.STORAGE_LOW;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    OptionalLong freeMb = situation.machine().freeMb();
    if (freeMb.isEmpty()) {
      return Verdict.UNKNOWN;
    }
    return freeMb.getAsLong() < leastFreeMb ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        Locale.ROOT,
        "%s, probe %s: %d MB are free on the disk of the record, less than %.0f MB, for %s. A firing"
            + " takes a few MB; once the disk is full nothing more is recorded. First check"
            + " what fills it (df -h, then du -sh on its folders), then delete or move old logs,"
            + " downloads and packages. Leave the record where it is.",
        situation.kiln(),
        situation.probe(),
        situation.machine().freeMb().orElse(0),
        leastFreeMb,
        Words.span(heldSeconds));
  }
}
