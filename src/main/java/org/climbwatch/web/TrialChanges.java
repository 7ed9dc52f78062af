package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.Rules;

/**
 * Reads the settings to be tried: an object for each rule, in it the rule's own keys. Mistakes are
 * told together, each with its key and what is allowed.
 */
final class TrialChanges {
  private final JsonParser in;
  private final List<RuleChange> changes = new ArrayList<>();
  private final List<String> mistakes = new ArrayList<>();

  TrialChanges(JsonParser in) {
    this.in = in;
  }

  /**
   * @throws Refused with all mistakes, or when there is nothing to try
   */
  List<RuleChange> all() {
    if (!mistakes.isEmpty()) {
      throw Refused.badRequest(String.join("; ", mistakes) + ".");
    }
    if (changes.isEmpty()) {
      throw Refused.badRequest(
          "Say what to try: \"alarm\" with one of " + known() + ", and in it its settings.");
    }
    return changes;
  }

  /** Reads the object that the parser stands at. */
  void read() throws IOException {
    requireObject("alarm");
    Set<String> seen = new HashSet<>();
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String table = "alarm." + in.currentName();
      Optional<RuleKind> kind = kind(in.currentName());
      in.nextToken();
      if (kind.isEmpty()) {
        mistakes.add(table + " is an unknown rule (known: " + known() + ")");
        in.skipChildren();
      } else if (!seen.add(table)) {
        throw Refused.badRequest("Field \"" + table + "\" is there twice.");
      } else {
        rule(kind.get(), table);
      }
    }
  }

  private void rule(RuleKind kind, String table) throws IOException {
    requireObject(table);
    Optional<Boolean> enabled = Optional.empty();
    Map<String, Double> numbers = new LinkedHashMap<>();
    Set<String> seen = new HashSet<>();
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String key = in.currentName();
      if (!seen.add(key)) {
        throw Refused.badRequest("Field \"" + table + "." + key + "\" is there twice.");
      }
      in.nextToken();
      if (key.equals("enabled")) {
        enabled = flag(table + ".enabled");
      } else {
        number(kind, key, table + "." + key).ifPresent(value -> numbers.put(key, value));
      }
    }
    if (seen.isEmpty()) {
      mistakes.add(table + " names no setting (known: enabled, " + keys(kind) + ")");
    }
    changes.add(new RuleChange(kind, enabled, numbers));
  }

  private Optional<Boolean> flag(String full) throws IOException {
    if (!in.currentToken().isBoolean()) {
      mistakes.add(full + " = " + shown() + " is neither true nor false");
      return Optional.empty();
    }
    return Optional.of(in.getBooleanValue());
  }

  private Optional<Double> number(RuleKind kind, String key, String full) throws IOException {
    Optional<RuleKind.Number> known =
        RuleChange.settable(kind).stream().filter(each -> each.key().equals(key)).findFirst();
    if (known.isEmpty()) {
      mistakes.add(full + " is an unknown key (known: enabled, " + keys(kind) + ")");
      in.skipChildren();
      return Optional.empty();
    }
    double low = known.get().low();
    double high = known.get().high();
    String allowed = " (allowed: " + TrialToml.plain(low) + " to " + TrialToml.plain(high) + ")";
    if (!in.currentToken().isNumeric()) {
      mistakes.add(full + " = " + shown() + " is not a number" + allowed);
      return Optional.empty();
    }
    double value = in.getDoubleValue();
    if (!(value >= low && value <= high)) {
      mistakes.add(full + " = " + shown() + " is out of range" + allowed);
      return Optional.empty();
    }
    return Optional.of(value);
  }

  private void requireObject(String name) {
    if (in.currentToken() != JsonToken.START_OBJECT) {
      throw Refused.badRequest("Field \"" + name + "\" must be a JSON object.");
    }
  }

  /** What stands there, in short; an object or a list is passed over. */
  private String shown() throws IOException {
    if (in.currentToken().isStructStart()) {
      in.skipChildren();
      return "an object or a list";
    }
    String text = in.getText().length() <= 40 ? in.getText() : in.getText().substring(0, 40);
    return in.currentToken() == JsonToken.VALUE_STRING ? "\"" + text + "\"" : text;
  }

  private static Optional<RuleKind> kind(String word) {
    return Rules.ALL.stream().filter(each -> each.alarm().word().equals(word)).findFirst();
  }

  private static String keys(RuleKind kind) {
    return RuleChange.settable(kind).stream()
        .map(RuleKind.Number::key)
        .collect(Collectors.joining(", "));
  }

  private static String known() {
    return Rules.ALL.stream().map(kind -> kind.alarm().word()).collect(Collectors.joining(", "));
  }
}
