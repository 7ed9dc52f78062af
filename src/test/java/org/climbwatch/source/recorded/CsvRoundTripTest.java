package org.climbwatch.source.recorded;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.export.FiringCsv;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;

/** What the CSV is written from and what is read of it are the same, bit for bit. */
class CsvRoundTripTest {
  private static final long WALL_MS = 1_795_600_000_000L;

  @Property(tries = 300)
  void inputsComeBackFromTheCsvAsTheyWere(@ForAll("inputs") List<Input> untimed)
      throws IOException {
    List<Input> inputs = timed(untimed);
    Path file = Files.createTempFile("firing", ".csv");
    try {
      write(inputs, file);

      assertThat(read(file)).isEqualTo(inputs);
    } finally {
      Files.delete(file);
    }
  }

  @Provide
  Arbitrary<List<Input>> inputs() {
    return Arbitraries.oneOf(emf(), linearised(), faulty(), deeds()).list().ofMaxSize(20);
  }

  private static Arbitrary<Input> emf() {
    return Combinators.combine(
            Arbitraries.doubles().between(-10, 80),
            Arbitraries.doubles().between(-40, 85),
            Arbitraries.integers().between(1, 4096),
            Arbitraries.doubles().between(0, 30))
        .as(
            (emf, cold, samples, spread) ->
                new Input.Measured(
                    Reading.emf(at(0, 0), "upper", emf, cold, samples, of(samples, spread))));
  }

  private static Arbitrary<Input> linearised() {
    return Combinators.combine(
            Arbitraries.doubles().between(-200, 1800),
            Arbitraries.doubles().between(-40, 85).optional(),
            Arbitraries.integers().between(1, 4096),
            Arbitraries.doubles().between(0, 30))
        .as(
            (hot, cold, samples, spread) ->
                new Input.Measured(
                    Reading.linearised(
                        at(0, 0),
                        "upper",
                        hot,
                        cold.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                        samples,
                        of(samples, spread))));
  }

  /** A single look has no spread. */
  private static double of(int samples, double spread) {
    return samples == 1 ? 0 : spread;
  }

  private static Arbitrary<Input> faulty() {
    return Arbitraries.of(Fault.values())
        .map(fault -> new Input.Measured(Reading.faulty(at(0, 0), "upper", fault)));
  }

  private static Arbitrary<Input> deeds() {
    // whole characters only: half a surrogate pair is no text that a file could hold
    Arbitrary<String> text =
        Arbitraries.strings().withChars("=+-@\t\r\n'\",;: abcä窯").ofMaxLength(12);
    return Arbitraries.oneOf(
        text.map(note -> new Input.Noted(at(0, 0), note)),
        text.map(name -> new Input.Began(at(0, 0), name)),
        Arbitraries.of(Phase.values()).map(phase -> new Input.Declared(at(0, 0), phase)),
        signatures().map(by -> new Input.Acknowledged(at(0, 0), "climb_stalled", by)),
        signatures().map(by -> new Input.Unshelved(at(0, 0), "falling", by)),
        signatures().map(by -> new Input.Reset(at(0, 0), "falling", by)),
        Combinators.combine(Arbitraries.longs().between(60, 28_800), signatures())
            .as(
                (seconds, by) ->
                    new Input.Shelved(
                        at(0, 0), "falling", new Shelving(Duration.ofSeconds(seconds), by))),
        Arbitraries.of(0).map(any -> new Input.Ended(at(0, 0))),
        Arbitraries.of(
                new Report.Writing("the disk is full; free some, \"at once\""),
                new Report.Writing(""),
                new Report.FreeSpace(183),
                new Report.Clock("nothing: has set it"),
                new Report.ClockJump(-7500))
            .map(report -> new Input.Reported(at(0, 0), report)),
        Arbitraries.of(0L, 1L, 86_400L)
            .map(away -> new Input.Resumed(at(0, 0), Duration.ofSeconds(away))));
  }

  private static Arbitrary<Signature> signatures() {
    return Combinators.combine(
            Arbitraries.of("Ann", "", "Bo: shed"),
            Arbitraries.strings().withChars("=+-\r\n'\",;: ab窯").ofMaxLength(12))
        .as(Signature::new);
  }

  /** The same inputs one after the other, 137 ms apart; each resuming begins a boot. */
  private static List<Input> timed(List<Input> untimed) {
    List<Input> timed = new ArrayList<>();
    int boot = 0;
    for (Input input : untimed) {
      boot += input instanceof Input.Resumed ? 1 : 0;
      timed.add(moved(input, at(boot, timed.size() * 137L)));
    }
    return timed;
  }

  private static Input moved(Input input, Moment at) {
    if (input instanceof Input.Measured measured) {
      return new Input.Measured(moved(measured.reading(), at));
    }
    if (input instanceof Input.Noted noted) {
      return new Input.Noted(at, noted.text());
    }
    if (input instanceof Input.Began began) {
      return new Input.Began(at, began.name());
    }
    if (input instanceof Input.Declared declared) {
      return new Input.Declared(at, declared.phase());
    }
    if (input instanceof Input.Acknowledged answered) {
      return new Input.Acknowledged(at, answered.alarmId(), answered.by());
    }
    if (input instanceof Input.Shelved shelved) {
      return new Input.Shelved(at, shelved.alarmId(), shelved.shelving());
    }
    if (input instanceof Input.Unshelved unshelved) {
      return new Input.Unshelved(at, unshelved.alarmId(), unshelved.by());
    }
    if (input instanceof Input.Reset reset) {
      return new Input.Reset(at, reset.alarmId(), reset.by());
    }
    if (input instanceof Input.Reported reported) {
      return new Input.Reported(at, reported.report());
    }
    return input instanceof Input.Resumed resumed
        ? new Input.Resumed(at, resumed.away())
        : new Input.Ended(at);
  }

  private static Reading moved(Reading reading, Moment at) {
    if (reading instanceof Reading.Emf emf) {
      return Reading.emf(
          at, "upper", emf.emfMv(), emf.coldJunctionC(), emf.samples(), emf.spreadMv());
    }
    if (reading instanceof Reading.Linearised linearised) {
      return Reading.linearised(
          at,
          "upper",
          linearised.temperatureC(),
          linearised.coldJunctionC(),
          linearised.samples(),
          linearised.spreadC());
    }
    return Reading.faulty(at, "upper", ((Reading.Faulty) reading).fault());
  }

  private static void write(List<Input> inputs, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      FiringCsv csv = new FiringCsv(out);
      csv.header();
      for (Input input : inputs) {
        if (input instanceof Input.Measured measured) {
          write(measured.reading(), csv);
        } else {
          writeDeed(input, csv);
        }
      }
      csv.flush();
    }
  }

  /** Integers as the journal keeps them. */
  private static void write(Reading reading, FiringCsv csv) throws IOException {
    int none = FiringCsv.NONE;
    long ms = reading.at().millis();
    if (reading instanceof Reading.Emf emf) {
      int tenthUv = steps(emf.emfMv(), 1e4);
      int coldMilliC = steps(emf.coldJunctionC(), 1e3);
      csv.reading(
          WALL_MS + ms,
          ms,
          "upper",
          20_000,
          300,
          none,
          tenthUv,
          coldMilliC,
          "good",
          "climbing",
          emf.samples(),
          emf.samples() == 1 ? none : steps(emf.spreadMv(), 1e4),
          none);
    } else if (reading instanceof Reading.Linearised linearised) {
      int milliC = steps(linearised.temperatureC(), 1e3);
      OptionalDouble cold = linearised.coldJunctionC();
      int coldMilliC = cold.isPresent() ? steps(cold.getAsDouble(), 1e3) : none;
      csv.reading(
          WALL_MS + ms,
          ms,
          "upper",
          milliC,
          300,
          1200,
          none,
          coldMilliC,
          "good",
          "climbing",
          linearised.samples(),
          none,
          linearised.samples() == 1 ? none : steps(linearised.spreadC(), 1e3));
    } else {
      String word = ((Reading.Faulty) reading).fault().word();
      csv.reading(
          WALL_MS + ms,
          ms,
          "upper",
          none,
          none,
          none,
          none,
          none,
          word,
          "climbing",
          none,
          none,
          none);
    }
  }

  private static void writeDeed(Input input, FiringCsv csv) throws IOException {
    long ms = input.at().millis();
    if (input instanceof Input.Noted noted) {
      csv.deed(WALL_MS + ms, ms, "climbing", noted.text(), "noted");
    } else if (input instanceof Input.Began began) {
      csv.deed(WALL_MS + ms, ms, "drying", began.name(), "began");
    } else if (input instanceof Input.Declared declared) {
      csv.deed(WALL_MS + ms, ms, declared.phase().word(), "", "declared");
    } else {
      writeAlarmDeed(input, csv);
    }
  }

  /** As the program names them in its own export. */
  private static void writeAlarmDeed(Input input, FiringCsv csv) throws IOException {
    long ms = input.at().millis();
    String action = "ended";
    String note = "";
    if (input instanceof Input.Acknowledged answered) {
      action = "acknowledged";
      note = answered.alarmId() + ": " + answered.by().text();
    } else if (input instanceof Input.Shelved shelved) {
      action = "shelved";
      note = shelved.alarmId() + " for " + shelved.shelving().text();
    } else if (input instanceof Input.Unshelved unshelved) {
      action = "unshelved";
      note = unshelved.alarmId() + ": " + unshelved.by().text();
    } else if (input instanceof Input.Reset reset) {
      action = "reset";
      note = reset.alarmId() + ": " + reset.by().text();
    } else if (input instanceof Input.Resumed resumed) {
      action = "resumed";
      note = resumed.away().isZero() ? "" : "away " + resumed.away().toSeconds() + " s";
    } else if (input instanceof Input.Reported reported) {
      action = "reported";
      note = reported.report().matter() + ": " + reported.report().text();
    }
    csv.deed(WALL_MS + ms, ms, "climbing", note, action);
  }

  private static int steps(double value, double perUnit) {
    return (int) Math.rint(value * perUnit);
  }

  private static List<Input> read(Path file) {
    List<Input> all = new ArrayList<>();
    try (Recording recording = new Recording(file, List.of("upper"))) {
      Optional<Input> next = recording.next();
      while (next.isPresent()) {
        all.add(next.get());
        next = recording.next();
      }
    }
    return all;
  }

  private static Moment at(int boot, long millis) {
    return new Moment(boot, millis);
  }
}
