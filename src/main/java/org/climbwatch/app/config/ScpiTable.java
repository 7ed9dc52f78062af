package org.climbwatch.app.config;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.source.Signal;
import org.climbwatch.source.port.PortSettings;
import org.climbwatch.source.scpi.ScpiSettings;
import org.climbwatch.source.scpi.ScpiSettings.ColdJunctionFrom;
import org.climbwatch.source.scpi.ScpiSettings.Meaning;

/** The keys of {@code [probe.scpi]}. */
final class ScpiTable {
  /** Stands in for a query that is wrong, for the file is refused anyway. */
  private static final String SOME_QUERY = "READ?";

  private final Section probe;
  private final Section table;

  ScpiTable(Section probe, Section table) {
    this.probe = probe;
    this.table = table;
  }

  ScpiSettings read() {
    PortSettings line = new PortKeys(probe, table, "scpi").line();
    if (!table.has("query")) {
      probe.mistake(
          "scpi", "has no query; write what the instrument is asked, for example \"READ?\"");
    }
    String query = query("query").orElse(SOME_QUERY);
    List<String> setup = setup();
    List<String> words = List.of("temperature_c", "emf_v", "emf_mv");
    Meaning meaning =
        Meaning.valueOf(table.choice("gives", words.get(0), words).toUpperCase(Locale.ROOT));
    ColdJunctionFrom coldJunction = coldJunction(meaning);
    boolean overload = table.flag("overload_is_open_circuit", false);
    Duration pause = PortKeys.seconds(table, "poll_s", ScpiSettings.DEFAULT_PAUSE, 0.1, 60);
    Duration timeout = PortKeys.seconds(table, "timeout_s", ScpiSettings.DEFAULT_TIMEOUT, 0.1, 60);
    Duration silence = PortKeys.seconds(table, "silence_s", ScpiSettings.DEFAULT_SILENCE, 1, 600);
    if (silence.compareTo(timeout.multipliedBy(2)) < 0) {
      table.wrong(
          table.has("silence_s") ? "silence_s" : "timeout_s",
          (table.has("silence_s") ? silence : timeout).toMillis() / 1000.0,
          "leaves no time for a second try",
          "make silence_s at least twice timeout_s");
    }
    return new ScpiSettings(
        line, setup, query, meaning, coldJunction, overload, pause, timeout, silence);
  }

  private Optional<String> query(String key) {
    Optional<String> query = table.text(key).filter(text -> isPlain(key, text));
    if (query.isPresent() && !ScpiSettings.isQuery(query.get())) {
      table.wrong(
          key,
          query.get(),
          "is not one query",
          "write one message with one ? and no ; so that one answer comes");
      return Optional.empty();
    }
    return query;
  }

  private List<String> setup() {
    List<String> setup = table.texts("setup");
    for (String command : setup) {
      boolean plain = isPlain("setup", command);
      if (plain && command.indexOf('?') >= 0) {
        table.wrong("setup", command, "asks for an answer", "write commands without ? there");
      }
      if (!plain || command.indexOf('?') >= 0) {
        return List.of();
      }
    }
    return setup;
  }

  /** SCPI messages are printable ASCII; anything else would go out changed. */
  private boolean isPlain(String key, String text) {
    boolean plain = !text.isBlank() && text.chars().allMatch(c -> c >= ' ' && c <= '~');
    if (!plain) {
      table.wrong(
          key, text, "holds what no instrument reads", "write letters, digits and signs of ASCII");
    }
    return plain;
  }

  private ColdJunctionFrom coldJunction(Meaning meaning) {
    Optional<String> query = query("cold_junction_query");
    OptionalDouble fixedC =
        table.optionalNumber(
            "cold_junction_c", Signal.LEAST_COLD_JUNCTION_C, Signal.MOST_COLD_JUNCTION_C);
    boolean asked = table.has("cold_junction_query");
    if (asked && table.has("cold_junction_c")) {
      table.mistake("cold_junction_c", "contradicts cold_junction_query; take one of the two out");
    }
    if (query.isPresent()) {
      return new ColdJunctionFrom(query, OptionalDouble.empty());
    }
    boolean needed = meaning != Meaning.TEMPERATURE_C && fixedC.isEmpty();
    if (needed && !asked && !table.has("cold_junction_c")) {
      table.mistake(
          "gives",
          "= \""
              + meaning.name().toLowerCase(Locale.ROOT)
              + "\" needs the temperature of the terminals; add cold_junction_query, or"
              + " cold_junction_c where it is kept the same");
    }
    return new ColdJunctionFrom(Optional.empty(), needed ? OptionalDouble.of(0) : fixedC);
  }
}
