package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;

/** The alarm settings, and what a trial of others has shown. */
final class TrialJson {
  private static final List<String> CHANGES = List.of("earlier", "later", "new", "gone", "same");

  private TrialJson() {}

  /** Every rule with what can be set of it: as it is, as it is unless set, and its limits. */
  static void settings(JsonGenerator out, AlarmSettings inForce) throws IOException {
    out.writeStartObject();
    out.writeArrayFieldStart("rules");
    for (RuleKind kind : Rules.ALL) {
      RuleSettings rule = inForce.of(kind.alarm());
      out.writeStartObject();
      out.writeStringField("kind", kind.alarm().word());
      out.writeStringField("title", kind.alarm().title());
      out.writeBooleanField("enabled", rule.enabled());
      out.writeArrayFieldStart("settings");
      for (RuleKind.Number number : RuleChange.settable(kind)) {
        out.writeStartObject();
        out.writeStringField("key", number.key());
        value(out, "value", RuleChange.value(rule, number.key()));
        value(out, "usual", number.usual());
        value(out, "low", number.low());
        value(out, "high", number.high());
        out.writeEndObject();
      }
      out.writeEndArray();
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeNumberField("most_firings", TrialOrder.MOST_FIRINGS);
    out.writeEndObject();
  }

  /** How each stands, without what it has shown. */
  static void kept(JsonGenerator out, List<TrialSoFar> trials) throws IOException {
    out.writeStartObject();
    out.writeArrayFieldStart("trials");
    for (TrialSoFar trial : trials) {
      out.writeStartObject();
      head(out, trial);
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  static void trial(JsonGenerator out, TrialSoFar trial, AlarmSettings inForce) throws IOException {
    out.writeStartObject();
    head(out, trial);
    out.writeStringField("toml", TrialToml.tables(trial.settings(), inForce));
    counts(out, trial.results());
    out.writeArrayFieldStart("results");
    for (TriedFiring tried : trial.results()) {
      firing(out, tried);
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private static void head(JsonGenerator out, TrialSoFar trial) throws IOException {
    out.writeNumberField("id", trial.id());
    out.writeStringField("state", trial.state().word());
    out.writeNumberField("firings", trial.firings());
    out.writeNumberField("tried", trial.results().size());
    Json.number(out, "took_s", OptionalDouble.of(trial.tookS()), 1);
    out.writeArrayFieldStart("rules");
    for (RuleSettings rule : trial.settings()) {
      out.writeString(rule.alarm().word());
    }
    out.writeEndArray();
  }

  private static void counts(JsonGenerator out, List<TriedFiring> results) throws IOException {
    out.writeObjectFieldStart("counts");
    for (String change : CHANGES) {
      long count =
          results.stream()
              .flatMap(tried -> tried.alarms().stream())
              .filter(alarm -> alarm.change().equals(change))
              .count();
      out.writeNumberField(change, count);
    }
    out.writeEndObject();
  }

  private static void firing(JsonGenerator out, TriedFiring tried) throws IOException {
    out.writeStartObject();
    out.writeNumberField("firing", tried.firing().id());
    out.writeStringField("name", tried.firing().name());
    out.writeStringField("began", Json.time(tried.firing().began()));
    out.writeArrayFieldStart("differences");
    for (TriedFiring.Alarm alarm : tried.alarms()) {
      out.writeStartObject();
      out.writeStringField("kind", alarm.kind().word());
      out.writeStringField("title", alarm.kind().title());
      out.writeStringField("probe", alarm.probe().orElse(null));
      Json.number(out, "was_s", alarm.wasS(), 3);
      Json.number(out, "would_s", alarm.wouldS(), 3);
      out.writeStringField("change", alarm.change());
      out.writeStringField("message", alarm.message());
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private static void value(JsonGenerator out, String name, double value) throws IOException {
    Json.number(out, name, OptionalDouble.of(value), 6);
  }
}
