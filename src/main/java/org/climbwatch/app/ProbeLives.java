package org.climbwatch.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.ProbeDrift;
import org.climbwatch.journal.ProbeWear;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.web.ProbeLife;

/** What each probe has been through, from the record, and what follows from it. */
final class ProbeLives {
  private ProbeLives() {}

  /** Those of all probes, the followed one first. */
  static List<ProbeLife> of(Configuration configuration, Path journalFile) {
    List<ProbeLife> lives = new ArrayList<>();
    List<ProbeSettings> probes = configuration.watch().probes();
    try (Firings firings = Firings.open(journalFile)) {
      for (int i = 0; i < probes.size(); i++) {
        lives.add(life(firings, probes.get(i), sinceMs(configuration, i), configuration, i));
      }
    }
    return lives;
  }

  private static ProbeLife life(
      Firings firings, ProbeSettings probe, long sinceMs, Configuration configuration, int index) {
    ProbeWear wear = firings.wear(probe.name(), sinceMs);
    // of two couples only firings with both of them tell
    long bothSinceMs = Math.max(sinceMs, sinceMs(configuration, 0));
    Optional<ProbeDrift> drift =
        index > 0 && probe.compared() ? firings.drift(probe.name(), bothSinceMs) : Optional.empty();
    return new ProbeLife(
        probe.name(),
        probe.type().name(),
        configuration.fitted().get(index),
        wear.firings(),
        wear.highFirings(),
        wear.hoursOver800C(),
        wear.hoursOver1000C(),
        wear.hoursOver1100C(),
        wear.hoursOver1200C(),
        drift.flatMap(ProbeAdvice::drift),
        ProbeAdvice.word(probe.type(), wear),
        ProbeAdvice.text(probe.type(), wear));
  }

  private static long sinceMs(Configuration configuration, int index) {
    Optional<LocalDate> fitted = configuration.fitted().get(index);
    return fitted
        .map(day -> day.atStartOfDay(ZoneId.systemDefault()).toInstant().toEpochMilli())
        .orElse(Long.MIN_VALUE);
  }
}
