package org.climbwatch.source.recorded;

import java.util.OptionalDouble;
import org.climbwatch.alarm.Report;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;

/** Makes an input of the watch of a row. Complaints are without the place. */
final class RowInputs {
  /** No signal and no temperature that a thermocouple amplifier tells lies beyond. */
  private static final double BEYOND = 10_000;

  private static final double MOST_SAMPLES = 1e6;

  private static final String GOOD = "good";
  private static final String FORMULA_STARTS = "=+-@\t\r'";

  private final CsvRows rows;
  private final Columns columns;
  private String probe;

  RowInputs(CsvRows rows, Columns columns, String probe) {
    this.rows = rows;
    this.columns = columns;
    this.probe = probe;
  }

  /** The name that readings get. */
  String probe() {
    return probe;
  }

  /** Names the probe of what follows. */
  void of(String name) {
    probe = name;
  }

  /** A number that must be there and within what makes sense. */
  double number(int column, String name, double beyond) {
    double value = rows.number(column);
    if (Double.isNaN(value)) {
      throw new BadRecording(
          name
              + " = \""
              + rows.text(column)
              + "\" is not a number; write it with '.' as the decimal point, for example 1004.5");
    }
    if (Math.abs(value) > beyond) {
      throw new BadRecording(
          name + " = " + value + " makes no sense; allowed: -" + beyond + " to " + beyond);
    }
    return value;
  }

  /** A row without an action: a reading, or a note that stands alone. */
  Input reading(Moment at) {
    boolean signal = !rows.isEmpty(columns.emf()) && !rows.isEmpty(columns.coldJunction());
    boolean temperature = !rows.isEmpty(columns.temperature());
    boolean good = rows.isEmpty(columns.quality()) || rows.is(columns.quality(), GOOD);
    Fault fault = good ? Fault.NO_ANSWER : fault(rows.text(columns.quality()));
    // what is out of the thermocouple's range is found again by the core, if need be
    if (signal && (good || fault == Fault.OUT_OF_RANGE || fault == Fault.BELOW_RANGE)) {
      return new Input.Measured(emf(at));
    }
    if (temperature && good) {
      return new Input.Measured(linearised(at));
    }
    if (good && !rows.isEmpty(columns.quality())) {
      throw new BadRecording(
          "quality is good but there is no temperature; leave quality empty or name the fault");
    }
    return good && !rows.isEmpty(columns.note())
        ? new Input.Noted(at, note())
        : new Input.Measured(Reading.faulty(at, probe, fault));
  }

  /** A row with an action. */
  Input deed(String action, Moment at) {
    return switch (action) {
      case "began" -> new Input.Began(at, note());
      case "ended" -> new Input.Ended(at);
      case "declared" -> new Input.Declared(at, phase());
      case "noted" -> new Input.Noted(at, note());
      case "acknowledged", "shelved", "unshelved", "reset" ->
          AlarmDeed.of(note(), rows.text(columns.probe())).input(action, at);
      case "reported" -> new Input.Reported(at, report());
      case "resumed" -> new Input.Resumed(at, AlarmDeed.away(note()));
      default ->
          throw new BadRecording(
              "action \""
                  + action
                  + "\" is unknown; allowed: began, ended, declared, noted, acknowledged, shelved,"
                  + " unshelved, reset, resumed, reported, configured, remarked, or empty");
    };
  }

  private Reading emf(Moment at) {
    int samples = samples();
    return Reading.emf(
        at,
        probe,
        number(columns.emf(), "emf_mv", BEYOND),
        number(columns.coldJunction(), "cold_junction_c", BEYOND),
        samples,
        spread(columns.spreadMv(), "spread_mv", samples));
  }

  /** How many looks a row is the middle of; one where nothing is said. */
  private int samples() {
    if (rows.isEmpty(columns.samples())) {
      return 1;
    }
    double samples = number(columns.samples(), "samples", MOST_SAMPLES);
    if (samples < 1 || samples != Math.rint(samples)) {
      throw new BadRecording(
          "samples = "
              + rows.text(columns.samples())
              + " makes no sense; allowed: whole numbers from 1 on, or nothing");
    }
    return (int) samples;
  }

  private double spread(int column, String name, int samples) {
    double spread = rows.isEmpty(column) ? 0 : number(column, name, BEYOND);
    if (spread < 0 || (spread > 0 && samples == 1)) {
      throw new BadRecording(
          name + " = " + spread + " makes no sense; allowed: 0 or more, with samples above 1");
    }
    return spread;
  }

  private Reading linearised(Moment at) {
    OptionalDouble coldJunctionC =
        rows.isEmpty(columns.coldJunction())
            ? OptionalDouble.empty()
            : OptionalDouble.of(number(columns.coldJunction(), "cold_junction_c", BEYOND));
    double temperatureC = number(columns.temperature(), "temperature_c", BEYOND);
    int samples = samples();
    return Reading.linearised(
        at,
        probe,
        temperatureC,
        coldJunctionC,
        samples,
        spread(columns.spreadC(), "spread_c", samples));
  }

  private static Fault fault(String word) {
    try {
      return Fault.ofWord(word);
    } catch (IllegalArgumentException unknown) {
      throw new BadRecording(unknown.getMessage());
    }
  }

  private Phase phase() {
    try {
      return Phase.ofWord(rows.text(columns.phase()));
    } catch (IllegalArgumentException unknown) {
      throw new BadRecording(unknown.getMessage());
    }
  }

  /** Of the note of {@code reported}: the matter, a colon, and what there is to say of it. */
  private Report report() {
    String note = note();
    int colon = note.indexOf(':');
    try {
      return Report.of(note.substring(0, Math.max(0, colon)), note.substring(colon + 1).strip());
    } catch (IllegalArgumentException wrong) {
      throw new BadRecording(
          "the note of reported must be as \"free_space: 183 MB\" or \"writing: well\"; "
              + wrong.getMessage());
    }
  }

  /** The text without the apostrophe that made it harmless to a spreadsheet. */
  private String note() {
    String note = rows.text(columns.note());
    boolean guarded =
        note.length() > 1 && note.charAt(0) == '\'' && FORMULA_STARTS.indexOf(note.charAt(1)) >= 0;
    return guarded ? note.substring(1) : note;
  }
}
