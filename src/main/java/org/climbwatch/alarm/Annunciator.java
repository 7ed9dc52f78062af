package org.climbwatch.alarm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Moment;

/** All alarms of one kiln. The list of rules below is where a new rule is registered. */
public final class Annunciator {
  private final List<Alarm> alarms = new ArrayList<>();

  /**
   * An alarm that is not normal, or has just become so.
   *
   * @param id the occurrence
   * @param since when it was raised
   */
  public record Standing(
      String id, AlarmKind kind, AlarmState state, Moment since, String message) {}

  public Annunciator(AlarmSettings settings) {
    for (Rule rule : rules(settings)) {
      alarms.add(new Alarm(rule));
    }
  }

  private static List<Rule> rules(AlarmSettings settings) {
    return List.of(
        new OverTemperature(settings.overTemperature()),
        new Falling(settings.falling()),
        new ProbeFault(settings.probeFault()),
        new ReadingsStopped(settings.readingsStopped()),
        new ClimbTooFast(settings.climbTooFast()),
        new ClimbStalled(settings.climbStalled()));
  }

  /** Goes on under other settings; what stands goes on standing. */
  public void configure(AlarmSettings settings) {
    List<Rule> rules = rules(settings);
    for (int i = 0; i < alarms.size(); i++) {
      alarms.get(i).configure(rules.get(i));
    }
  }

  /** Lets every rule look; gives what changed. */
  public List<Standing> look(Situation situation) {
    List<Standing> changes = List.of();
    for (int i = 0; i < alarms.size(); i++) {
      Alarm alarm = alarms.get(i);
      Optional<Alarm.Occurrence> changed = alarm.look(situation);
      if (changed.isPresent()) {
        changes = changes.isEmpty() ? new ArrayList<>() : changes;
        changes.add(standing(alarm, changed.get()));
      }
    }
    return changes;
  }

  /**
   * Answers an alarm.
   *
   * @param idOrKind an occurrence's id, or the word of a kind for whichever of it stands
   * @return what changed; empty when no such alarm stands unanswered
   */
  public Optional<Standing> acknowledge(String idOrKind) {
    for (Alarm alarm : alarms) {
      Optional<Alarm.Occurrence> occurrence = alarm.occurrence();
      boolean meant =
          occurrence.isPresent()
              && (occurrence.get().id().equals(idOrKind) || alarm.kind().word().equals(idOrKind));
      if (meant) {
        return alarm.acknowledge().map(answered -> standing(alarm, answered));
      }
    }
    return Optional.empty();
  }

  /** After a gap, delays start anew; what stands goes on standing. */
  public void resume() {
    alarms.forEach(Alarm::resume);
  }

  /** All that are not normal, the oldest first. */
  public List<Standing> standing() {
    List<Standing> all = new ArrayList<>();
    for (Alarm alarm : alarms) {
      alarm.occurrence().ifPresent(occurrence -> all.add(standing(alarm, occurrence)));
    }
    all.sort(Comparator.comparing(Standing::since));
    return List.copyOf(all);
  }

  private static Standing standing(Alarm alarm, Alarm.Occurrence occurrence) {
    return new Standing(
        occurrence.id(), alarm.kind(), alarm.state(), occurrence.since(), occurrence.message());
  }
}
