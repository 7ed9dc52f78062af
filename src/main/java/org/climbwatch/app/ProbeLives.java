package org.climbwatch.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Calibration;
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
    int probes = configuration.watch().probes().size();
    try (Firings firings = Firings.open(journalFile)) {
      List<Long> sinceMs = new ArrayList<>();
      for (int i = 0; i < probes; i++) {
        sinceMs.add(sinceMs(configuration, i, firings.calibrations()));
      }
      for (int i = 0; i < probes; i++) {
        // of two couples only firings with both of them tell
        long bothSinceMs = Math.max(sinceMs.get(i), sinceMs.get(0));
        lives.add(life(firings, sinceMs.get(i), bothSinceMs, configuration, i));
      }
    }
    return lives;
  }

  private static ProbeLife life(
      Firings firings, long sinceMs, long bothSinceMs, Configuration configuration, int index) {
    ProbeSettings probe = configuration.watch().probes().get(index);
    ProbeWear wear = firings.wear(probe.name(), sinceMs);
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

  /** When this couple was put in: by the configuration or by the record, whichever is later. */
  private static long sinceMs(Configuration configuration, int index, List<Calibration> recorded) {
    Optional<LocalDate> fitted = configuration.fitted().get(index);
    long fittedMs =
        fitted
            .map(day -> day.atStartOfDay(ZoneId.systemDefault()).toInstant().toEpochMilli())
            .orElse(Long.MIN_VALUE);
    String probe = configuration.watch().probes().get(index).name();
    return recorded.stream()
        .filter(one -> one.probe().equals(probe) && !one.checked())
        .mapToLong(one -> one.at().toEpochMilli())
        .reduce(fittedMs, Math::max);
  }
}
