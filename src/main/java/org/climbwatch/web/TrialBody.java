package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Reads the order of a trial. Rules and keys are those of the configuration:
 *
 * <pre>{"last": 5, "alarm": {"climb_stalled": {"on_delay_s": 300, "least_climb_c_per_h": 15}}}
 * </pre>
 */
final class TrialBody {
  private static final List<String> FIELDS = List.of("firings", "last", "alarm");

  private final JsonParser in;
  private final TrialChanges changes;
  private final Set<Long> firings = new LinkedHashSet<>();
  private OptionalInt last = OptionalInt.empty();

  private TrialBody(JsonParser in) {
    this.in = in;
    changes = new TrialChanges(in);
  }

  /**
   * @throws Refused with what is wrong and what is allowed
   */
  static TrialOrder read(JsonParser in) throws IOException {
    TrialBody body = new TrialBody(in);
    body.fields();
    if (body.firings.isEmpty() == body.last.isEmpty()) {
      throw Refused.badRequest(
          "Say on which firings: either \"firings\", a list of their numbers, or \"last\", how many"
              + " of the newest.");
    }
    return new TrialOrder(body.changes.all(), List.copyOf(body.firings), body.last);
  }

  private void fields() throws IOException {
    if (in.nextToken() != JsonToken.START_OBJECT) {
      throw Refused.badRequest("The body must be a JSON object with " + FIELDS + ".");
    }
    Set<String> seen = new HashSet<>();
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String name = in.currentName();
      if (!seen.add(name)) {
        throw Refused.badRequest("Field \"" + name + "\" is there twice.");
      }
      in.nextToken();
      switch (name) {
        case "last" -> last = OptionalInt.of((int) whole(name, TrialOrder.MOST_FIRINGS));
        case "firings" -> firings();
        case "alarm" -> changes.read();
        default ->
            throw Refused.badRequest("Unknown field \"" + name + "\"; allowed: " + FIELDS + ".");
      }
    }
    if (in.nextToken() != null) {
      throw Refused.badRequest("There is more after the JSON object.");
    }
  }

  private void firings() throws IOException {
    if (in.currentToken() != JsonToken.START_ARRAY) {
      throw Refused.badRequest("Field \"firings\" must be a list of numbers, such as [12, 11].");
    }
    while (in.nextToken() != JsonToken.END_ARRAY) {
      firings.add(whole("firings", Long.MAX_VALUE));
    }
    if (firings.isEmpty() || firings.size() > TrialOrder.MOST_FIRINGS) {
      throw Refused.badRequest(
          "Field \"firings\" must name 1 to "
              + TrialOrder.MOST_FIRINGS
              + " firings, had "
              + firings.size()
              + "; the command `replay --firings` tries settings on more.");
    }
  }

  private long whole(String field, long most) throws IOException {
    boolean number = in.currentToken() == JsonToken.VALUE_NUMBER_INT;
    if (!number || in.getNumberType() == JsonParser.NumberType.BIG_INTEGER) {
      throw Refused.badRequest("Field \"" + field + "\" takes whole numbers only.");
    }
    long value = in.getLongValue();
    if (value < 1 || value > most) {
      throw Refused.badRequest(
          "Field \"" + field + "\" must be 1 to " + most + ", was " + value + ".");
    }
    return value;
  }
}
