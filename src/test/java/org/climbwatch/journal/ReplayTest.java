package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.climbwatch.journal.Fixture.at;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.lifecycle.BeforeProperty;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;

/** What goes into the journal comes out again, in the same order and bit for bit. */
class ReplayTest {
  private Path folder;

  @BeforeProperty
  void makeFolder() throws IOException {
    folder = Files.createTempDirectory("replay");
  }

  @AfterProperty
  void removeFolder() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  /** An input whose time is set when it is its turn. */
  private interface Timed {
    Input at(Moment at);
  }

  /** One thing done to the journal. */
  private record Step(Timed input, boolean commitAfter, boolean restartAfter) {}

  @Provide
  Arbitrary<List<Step>> steps() {
    Arbitrary<Timed> inputs =
        Arbitraries.frequencyOf(Tuple.of(8, readings()), Tuple.of(2, deeds()));
    Arbitrary<Boolean> seldom = Arbitraries.integers().between(0, 9).map(n -> n == 0);
    return Combinators.combine(inputs, seldom, seldom).as(Step::new).list().ofMaxSize(60);
  }

  private static Arbitrary<Timed> readings() {
    Arbitrary<String> probes = Arbitraries.of("crown", "Brennkammer süd", "");
    Arbitrary<Double> emfMv = Arbitraries.doubles().between(-10, 80).ofScale(6);
    Arbitrary<Double> degreesC = Arbitraries.doubles().between(-250, 1850).ofScale(5);
    Arbitrary<OptionalDouble> coldC =
        degreesC.optional().map(o -> o.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    Arbitrary<Integer> samples = Arbitraries.integers().between(1, 4096);
    Arbitrary<Double> spread = Arbitraries.doubles().between(0, 200).ofScale(6);
    Arbitrary<Timed> emf =
        Combinators.combine(probes, emfMv, degreesC, samples, spread)
            .as(
                (probe, mv, cold, n, s) ->
                    at -> new Input.Measured(Reading.emf(at, probe, mv, cold, n, n == 1 ? 0 : s)));
    Arbitrary<Timed> linearised =
        Combinators.combine(probes, degreesC, coldC, samples, spread)
            .as(
                (probe, hot, cold, n, s) ->
                    at ->
                        new Input.Measured(
                            Reading.linearised(at, probe, hot, cold, n, n == 1 ? 0 : s)));
    Arbitrary<Timed> faulty =
        Combinators.combine(probes, Arbitraries.of(Fault.class))
            .as((probe, fault) -> at -> new Input.Measured(Reading.faulty(at, probe, fault)));
    return Arbitraries.oneOf(emf, linearised, faulty);
  }

  private static Arbitrary<Timed> deeds() {
    Arbitrary<String> texts = Arbitraries.strings().all().excludeChars('\0').ofMaxLength(20);
    Arbitrary<String> wellFormed =
        texts.map(t -> new String(t.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
    return Arbitraries.oneOf(
        wellFormed.map(text -> at -> new Input.Noted(at, text)),
        wellFormed.map(text -> at -> new Input.Began(at, text)),
        wellFormed.map(text -> at -> new Input.Acknowledged(at, text, "Ama")),
        wellFormed.map(
            text -> at -> new Input.Acknowledged(at, "stall-1", new Signature("Ama\nlate", text))),
        wellFormed.map(
            text ->
                at ->
                    new Input.Shelved(
                        at, text, new Shelving(Duration.ofSeconds(5400), new Signature("", text)))),
        wellFormed.map(text -> at -> new Input.Unshelved(at, text, Signature.NOBODY)),
        wellFormed.map(text -> at -> new Input.Reset(at, "x", new Signature(text, "done"))),
        Arbitraries.just(at -> new Input.Resumed(at, Duration.ofSeconds(95))),
        wellFormed.map(text -> at -> new Input.Reported(at, new Report.Writing(text))),
        Arbitraries.just(at -> new Input.Reported(at, new Report.FreeSpace(183))),
        Arbitraries.just(at -> new Input.Reported(at, new Report.ClockJump(-7500))),
        wellFormed.map(text -> at -> new Input.Configured(at, Fixture.settings(text))),
        Arbitraries.of(Phase.class).map(phase -> at -> new Input.Declared(at, phase)),
        Arbitraries.just(Input.Ended::new),
        Arbitraries.just(Input.Resumed::new));
  }

  @Property(tries = 60)
  void whatWentInComesOutAlikeAndInOrder(@ForAll("steps") List<Step> steps) {
    Path file = newFile();
    List<Input> in = new ArrayList<>();
    Journal journal = open(file);
    long ms = 0;
    for (Step step : steps) {
      Input input = step.input().at(at(0, ms += 1000));
      in.add(input);
      if (input instanceof Input.Measured measured) {
        journal.append(Fixture.judged(measured.reading()));
      } else {
        journal.record(input, List.of());
      }
      if (step.commitAfter()) {
        journal.commit();
      }
      if (step.restartAfter()) {
        journal.close();
        journal = open(file);
      }
    }

    List<Input> out = new ArrayList<>();
    journal.replay(out::add);
    journal.close();

    assertThat(out).isEqualTo(in);
  }

  private static Journal open(Path file) {
    Journal journal = Journal.open(file, Fixture.CODEC);
    journal.boot("boot-a", 0, Fixture.WALL_MS);
    return journal;
  }

  private Path newFile() {
    try {
      return Files.createTempDirectory(folder, "try").resolve("climbwatch.db");
    } catch (IOException unexpected) {
      throw new UncheckedIOException(unexpected);
    }
  }
}
