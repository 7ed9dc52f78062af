package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/** A firing's own inputs, counted from its begin, tell to the second and letter what it told. */
class SameFromItsBeginTest {

  @Property(tries = 40)
  void whereverTheClockHadItsZero(@ForAll @IntRange(min = 0, max = 400) int idleS) {
    List<Input> all = firing(idleS).inputs();
    Watch live = new Watch(Script.SETTINGS);
    List<Input> kept = new ArrayList<>();
    List<Event> told = new ArrayList<>();
    for (Input input : all) {
      Outcome outcome = live.accept(input);
      told.addAll(outcome.events());
      if (outcome.kept()) {
        kept.add(input);
      }
    }
    Moment begin = begun(told).orElseThrow().since();
    List<Input> own = kept.stream().filter(one -> one.at().compareTo(begin) >= 0).toList();

    assertThat(lines(Script.eventsOf(new Watch(Script.SETTINGS), moved(own, begin)), 0))
        .isEqualTo(lines(told, begin.millis()));
  }

  @Example
  void theFiringHasSomethingToTell() {
    assertThat(lines(firing(7).events(), 0))
        .anyMatch(line -> line.contains("falling"))
        .anyMatch(line -> line.contains("climb_stalled"))
        .anyMatch(line -> line.contains("stall_ahead"));
  }

  /** Warms by itself, levels off, loses a flame behind a noisy signal, and is lit again. */
  private static Script firing(int idleS) {
    Script script = new Script(18).climb(0, 3600 + idleS).climb(300, 5400);
    for (int minute = 0; minute < 200; minute++) {
      script.climb(220 * StrictMath.exp(-minute / 60.0), 60);
    }
    script.climb(400, 1200).faulty(Fault.OPEN_CIRCUIT, 20).climb(150, 1800);
    for (int second = 0; second < 240; second++) {
      script.climb(150 - (1 - StrictMath.exp(-second / 90.0)) * 1400, 1);
    }
    return script.climb(350, 2400).climb(-600, 900);
  }

  private static Optional<Event.FiringBegan> begun(List<Event> events) {
    return events.stream()
        .filter(Event.FiringBegan.class::isInstance)
        .map(Event.FiringBegan.class::cast)
        .findFirst();
  }

  private static List<Input> moved(List<Input> inputs, Moment begin) {
    List<Input> moved = new ArrayList<>();
    for (Input input : inputs) {
      Moment at = new Moment(0, input.at().millis() - begin.millis());
      Reading reading = ((Input.Measured) input).reading();
      if (reading instanceof Reading.Linearised one) {
        moved.add(
            new Input.Measured(
                Reading.linearised(at, one.probe(), one.temperatureC(), one.coldJunctionC())));
      } else {
        Fault fault = ((Reading.Faulty) reading).fault();
        moved.add(new Input.Measured(Reading.faulty(at, reading.probe(), fault)));
      }
    }
    return moved;
  }

  private static List<String> lines(List<Event> events, long zeroMillis) {
    return events.stream()
        .map(
            one ->
                one.at().millis()
                    - zeroMillis
                    + " "
                    + one.subject()
                    + " "
                    + one.state()
                    + " "
                    + one.message())
        .toList();
  }
}
