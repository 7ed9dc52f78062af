package org.climbwatch.source.serial;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;

/** The fields of one line whose check was right: keys, numbers, ranges, and what they add up to. */
final class Fields {
  /** Digits with at most one point; no exponent, no plus, no comma, no "nan". */
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,6}(\\.[0-9]{1,6})?");

  private enum Key {
    /** µV between the terminals. */
    EMF_UV(-1000 * Signal.MOST_EMF_MV, 1000 * Signal.MOST_EMF_MV),
    CJ_C(Signal.LEAST_COLD_JUNCTION_C, Signal.MOST_COLD_JUNCTION_C),
    TEMP_C(Signal.LEAST_TEMPERATURE_C, Signal.MOST_TEMPERATURE_C),
    FAULT(0, 0);

    final double least;
    final double most;

    Key(double least, double most) {
      this.least = least;
      this.most = most;
    }
  }

  /** Stops the reading of a line at the first thing that is wrong with it. */
  private static final class Declined extends Exception {
    final transient Decline why;

    Declined(Decline why) {
      super(why.word(), null, false, false);
      this.why = why;
    }
  }

  private final Map<Key, Double> numbers = new EnumMap<>(Key.class);
  private Optional<Fault> fault = Optional.empty();

  private Fields() {}

  static TextLine.Decoded decode(String text) {
    Fields fields = new Fields();
    try {
      for (String field : text.split(" ", -1)) {
        fields.add(field);
      }
      return new TextLine.Accepted(fields.signal());
    } catch (Declined declined) {
      return new TextLine.Declined(declined.why);
    }
  }

  private void add(String field) throws Declined {
    int equals = field.indexOf('=');
    if (equals < 1 || equals == field.length() - 1) {
      throw new Declined(Decline.SYNTAX);
    }
    Key key = key(field.substring(0, equals));
    String value = field.substring(equals + 1);
    if (numbers.containsKey(key) || (key == Key.FAULT && fault.isPresent())) {
      throw new Declined(Decline.REPEATED_KEY);
    }
    if (key == Key.FAULT) {
      fault = Optional.of(fault(value));
    } else {
      numbers.put(key, number(key, value));
    }
  }

  private static Key key(String name) throws Declined {
    for (Key key : Key.values()) {
      if (key.name().toLowerCase(Locale.ROOT).equals(name)) {
        return key;
      }
    }
    throw new Declined(Decline.UNKNOWN_KEY);
  }

  private static Fault fault(String value) throws Declined {
    return switch (value) {
      case "open" -> Fault.OPEN_CIRCUIT;
      case "short_ground" -> Fault.SHORT_TO_GROUND;
      case "short_supply" -> Fault.SHORT_TO_SUPPLY;
      case "range" -> Fault.OUT_OF_RANGE;
      default -> throw new Declined(Decline.UNKNOWN_KEY);
    };
  }

  private static double number(Key key, String value) throws Declined {
    if (!NUMBER.matcher(value).matches()) {
      throw new Declined(Decline.SYNTAX);
    }
    double number = Double.parseDouble(value);
    if (number < key.least || number > key.most) {
      throw new Declined(Decline.OUT_OF_RANGE);
    }
    return number;
  }

  private Signal signal() throws Declined {
    Double emfUv = numbers.get(Key.EMF_UV);
    Double coldJunctionC = numbers.get(Key.CJ_C);
    Double temperatureC = numbers.get(Key.TEMP_C);
    int statements = (emfUv == null ? 0 : 1) + (temperatureC == null ? 0 : 1);
    statements += fault.isPresent() ? 1 : 0;
    if (statements > 1) {
      throw new Declined(Decline.CONTRADICTORY);
    }
    if (fault.isPresent()) {
      return new Signal.Faulty(fault.get());
    }
    if (temperatureC != null) {
      return new Signal.Linearised(
          temperatureC,
          coldJunctionC == null ? OptionalDouble.empty() : OptionalDouble.of(coldJunctionC));
    }
    if (emfUv != null && coldJunctionC != null) {
      return new Signal.Emf(emfUv / 1000, coldJunctionC);
    }
    throw new Declined(Decline.INCOMPLETE);
  }
}
