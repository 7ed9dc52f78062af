package org.climbwatch.alarm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Moment;

/** All alarms of one kiln. */
public final class Annunciator {
  private List<Alarm> alarms = new ArrayList<>();

  /**
   * An alarm that is not normal, or has just become so.
   *
   * @param id the occurrence
   * @param probe whose readings raised it
   * @param since when it was raised
   */
  public record Standing(
      String id, String probe, AlarmKind kind, AlarmState state, Moment since, String message) {}

  /**
   * @param probes their names; all rules look at the first, which is the one that the firing
   *     follows, and the rules of a probe at the others
   */
  public Annunciator(AlarmSettings settings, List<String> probes) {
    configure(settings, probes);
  }

  /**
   * Goes on under other settings; what stands goes on standing as long as its probe is there.
   *
   * @return the alarms of probes and rules that are no longer there, which are thereby over
   */
  public List<Standing> configure(AlarmSettings settings, List<String> probes) {
    List<Alarm> before = alarms;
    alarms = new ArrayList<>();
    for (int i = 0; i < probes.size(); i++) {
      boolean followed = i == 0;
      for (RuleKind kind : Rules.ALL) {
        if (followed || kind.ofProbe()) {
          Rule rule = kind.rule(settings.of(kind.alarm()));
          alarms.add(continued(before, probes.get(i), followed, rule));
        }
      }
    }
    List<Standing> over = new ArrayList<>();
    for (Alarm dropped : before) {
      if (!alarms.contains(dropped)) {
        dropped.occurrence().ifPresent(last -> over.add(over(dropped, last)));
      }
    }
    return over;
  }

  private static Alarm continued(List<Alarm> before, String probe, boolean followed, Rule rule) {
    for (Alarm alarm : before) {
      if (alarm.kind() == rule.kind() && alarm.probe().equals(probe)) {
        alarm.configure(rule);
        return alarm;
      }
    }
    return new Alarm(rule, probe, followed);
  }

  private static Standing over(Alarm alarm, Alarm.Occurrence last) {
    return new Standing(
        last.id(), alarm.probe(), alarm.kind(), AlarmState.NORMAL, last.since(), last.message());
  }

  /** Lets every rule of the situation's probe look; gives what changed. */
  public List<Standing> look(Situation situation) {
    List<Standing> changes = List.of();
    for (int i = 0; i < alarms.size(); i++) {
      Alarm alarm = alarms.get(i);
      if (!alarm.probe().equals(situation.probe())) {
        continue;
      }
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
   * @param idOrKind an occurrence's id; or the word of a kind, with a dash and the probe's name
   *     behind it for another probe than the followed one, for whichever of it stands
   * @return what changed; empty when no such alarm stands unanswered
   */
  public Optional<Standing> acknowledge(String idOrKind) {
    for (Alarm alarm : alarms) {
      boolean meant =
          alarm.occurrence().filter(occurrence -> occurrence.id().equals(idOrKind)).isPresent()
              || (alarm.occurrence().isPresent() && alarm.called().equals(idOrKind));
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

  /** The same for the alarms of one probe, whose readings paused. */
  public void resume(String probe) {
    for (Alarm alarm : alarms) {
      if (alarm.probe().equals(probe)) {
        alarm.resume();
      }
    }
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
        occurrence.id(),
        alarm.probe(),
        alarm.kind(),
        alarm.state(),
        occurrence.since(),
        occurrence.message());
  }
}
