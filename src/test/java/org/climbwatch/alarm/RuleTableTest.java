package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.SignalHealth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of rules in {@code docs/alarms.md} against the rules that there are. */
class RuleTableTest {
  private static final int DEFAULT = 2;
  private static final int SUPPRESSED = 5;
  private static final int COLUMNS = 6;

  static List<RuleKind> rules() {
    return Rules.ALL;
  }

  @Test
  void everyRuleHasItsRowInTheProgramsOrder() {
    assertThat(rows().keySet())
        .containsExactlyElementsOf(rules().stream().map(kind -> kind.alarm().word()).toList());
    assertThat(rows().values())
        .allSatisfy(row -> assertThat(row).hasSize(COLUMNS).noneMatch(String::isBlank));
  }

  /** Delays of a minute and more may stand as minutes. */
  @ParameterizedTest
  @MethodSource("rules")
  void defaultNamesTheOnDelay(RuleKind kind) {
    long seconds = kind.usualDelays().on().toSeconds();
    if (seconds > 0) {
      String minutes = seconds % 60 == 0 ? "\\b" + seconds / 60 + " min\\b|" : "";
      assertThat(cell(kind, DEFAULT)).containsPattern(minutes + "\\b" + seconds + " s\\b");
    }
  }

  /** What "idle", "cooling" and "all but ..." in the last column say is what the rule says. */
  @ParameterizedTest
  @MethodSource("rules")
  void suppressedPhasesAreThoseOfTheRule(RuleKind kind) {
    Rule rule = kind.rule(kind.usual());
    String cell = cell(kind, SUPPRESSED);
    for (Phase phase : Phase.values()) {
      boolean documented =
          cell.startsWith("all but ")
              ? !cell.startsWith("all but " + phase.word())
              : Arrays.asList(cell.split("[,;] ?")).contains(phase.word());
      if (documented) {
        assertThat(rule.look(situation(phase), false))
            .as("%s while %s", kind.alarm().word(), phase)
            .isEqualTo(Rule.Verdict.NOT_APPLICABLE);
      }
      if (cell.equals("never")) {
        assertThat(rule.look(situation(phase), false)).isNotEqualTo(Rule.Verdict.NOT_APPLICABLE);
      }
    }
  }

  private static String cell(RuleKind kind, int column) {
    return rows().get(kind.alarm().word()).get(column);
  }

  private static Map<String, List<String>> rows() {
    Map<String, List<String>> rows = new LinkedHashMap<>();
    boolean inside = false;
    for (String line : lines()) {
      inside = line.startsWith("## ") ? line.equals("## The rules") : inside;
      if (inside && line.startsWith("| `")) {
        List<String> cells =
            Arrays.stream(line.substring(1).split("\\|")).map(String::strip).toList();
        rows.put(cells.get(0).replace("`", ""), cells);
      }
    }
    return rows;
  }

  private static List<String> lines() {
    try {
      return Files.readAllLines(Path.of("docs/alarms.md"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Situation situation(Phase phase) {
    return new Situation(
        new Moment(0, 0),
        "kiln",
        "probe",
        phase,
        false,
        false,
        0,
        OptionalDouble.empty(),
        OptionalDouble.of(800),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(800),
        OptionalDouble.empty(),
        new Forecast.NotYet(Forecast.Reason.TOO_EARLY),
        SignalHealth.UNKNOWN,
        false,
        Meant.NOTHING,
        Machine.UNKNOWN,
        Optional.empty());
  }
}
