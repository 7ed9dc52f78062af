package org.climbwatch.alarm;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.climbwatch.reading.Moment;

/** All alarms of one kiln. */
public final class Annunciator {
  private AlarmSettings settings;
  private List<Alarm> alarms = new ArrayList<>();

  /** Those of them that say whether a signal can be trusted: asked for several times a reading. */
  private List<Alarm> ofBadSignal = List.of();

  private List<Alarm> ofJumps = List.of();

  /** All alarms, those last that others say better: so a cause is said once, and at its worst. */
  private List<Ranked> ranked = List.of();

  private final Burst burst = new Burst();
  private Moment last = new Moment(0, 0);

  /**
   * An alarm that is not normal, or has just become so.
   *
   * @param id the occurrence
   * @param probe whose readings raised it
   * @param since when it was raised
   * @param message for people
   * @param seenAt when what the message tells was seen
   * @param shelvedUntil while it is shelved
   * @param by who has answered or shelved it
   * @param cameFirst whether others followed on it within minutes
   * @param reminder whether it only says again what was announced before
   */
  public record Standing(
      String id,
      String probe,
      AlarmKind kind,
      AlarmState state,
      Moment since,
      String message,
      Moment seenAt,
      Optional<Moment> shelvedUntil,
      Signature by,
      boolean cameFirst,
      boolean reminder) {}

  /**
   * Where the alarm of one rule and probe stands, whether or not there is an occurrence.
   *
   * @param called the kind's word, and the probe behind a dash where it is not the followed one
   */
  public record Watched(String called, String probe, AlarmKind kind, AlarmState state) {}

  /**
   * @param probes their names; all rules look at the first, which is the one that the firing
   *     follows, and the rules of a probe at the others
   */
  public Annunciator(AlarmSettings settings, List<String> probes) {
    configure(settings, probes);
  }

  /**
   * Goes on under other settings; what stands goes on standing as long as its probe and its rule
   * are there.
   *
   * @return what changed; alarms of probes that are no longer there are thereby over
   */
  public final List<Standing> configure(AlarmSettings other, List<String> probes) {
    settings = other;
    List<Alarm> before = alarms;
    List<Standing> changes = new ArrayList<>();
    alarms = new ArrayList<>();
    for (int i = 0; i < probes.size(); i++) {
      boolean followed = i == 0;
      for (RuleKind kind : Rules.ALL) {
        if (followed || kind.ofProbe()) {
          Rule rule = kind.rule(settings.of(kind.alarm()));
          alarms.add(continued(before, probes.get(i), followed, rule, changes));
        }
      }
    }
    ranked =
        alarms.stream().map(this::ranked).sorted(Comparator.comparingInt(Ranked::below)).toList();
    ofBadSignal = alarms.stream().filter(alarm -> alarm.kind().badSignal()).toList();
    ofJumps = alarms.stream().filter(alarm -> alarm.kind() == AlarmKind.PROBE_JUMPS).toList();
    for (Alarm dropped : before) {
      if (!alarms.contains(dropped)) {
        dropped.occurrence().ifPresent(one -> changes.add(over(dropped, one)));
      }
    }
    return changes;
  }

  /** Time has come to here. */
  public void reach(Moment at) {
    last = at;
  }

  /** Lets every rule of the situation's probe look; gives what changed. */
  public List<Standing> look(Situation situation) {
    reach(situation.at());
    Situation seen = situation.seen(signalBad(situation.probe()));
    List<Standing> changes = new ArrayList<>(0);
    for (int i = 0; i < ranked.size(); i++) {
      Alarm alarm = ranked.get(i).alarm();
      Optional<AlarmKind> saidBy = ranked.get(i).saidBy();
      if (alarm.hasExpired(last)) {
        add(alarm, alarm.expire(last, saidBy), changes);
      }
      if (alarm.probe().equals(situation.probe())) {
        add(alarm, alarm.look(seen, settings.reannounceAfter(), saidBy), changes);
      }
    }
    return changes;
  }

  /**
   * Whether a finding stands that single readings of a probe are not to be trusted. It is said in
   * place of all that would follow from them.
   */
  public boolean signalBad(String probe) {
    return anyPresent(ofBadSignal, probe);
  }

  /** Whether a finding stands that a probe's signal steps away and back. */
  public boolean signalJumps(String probe) {
    return anyPresent(ofJumps, probe);
  }

  private Ranked ranked(Alarm alarm) {
    List<AlarmKind> better = Rules.of(alarm.kind()).betterSaidBy();
    return new Ranked(
        alarm,
        alarms.stream()
            .filter(one -> better.contains(one.kind()) && one.probe().equals(alarm.probe()))
            .toList());
  }

  private static boolean anyPresent(List<Alarm> some, String probe) {
    for (int i = 0; i < some.size(); i++) {
      Alarm alarm = some.get(i);
      if (alarm.present() && alarm.probe().equals(probe)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the time of a shelved alarm is over. */
  public boolean hasExpired(Moment at) {
    for (int i = 0; i < alarms.size(); i++) {
      if (alarms.get(i).hasExpired(at)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Answers an alarm.
   *
   * @param idOrKind an occurrence's id; or the word of a kind, with a dash and the probe's name
   *     behind it for another probe than the followed one, for whichever of it stands
   * @return what changed; nothing when no such alarm stands unanswered
   */
  public List<Standing> acknowledge(Moment at, String idOrKind, Signature by) {
    return does(at, idOrKind, one -> one.alarm().acknowledge(by));
  }

  /** Puts an alarm aside from now on, also one that does not stand. */
  public List<Standing> shelve(Moment at, String idOrKind, Shelving shelving) {
    return does(at, idOrKind, one -> one.alarm().shelve(at, shelving));
  }

  /** Ends a shelving before its time. */
  public List<Standing> unshelve(Moment at, String idOrKind) {
    return does(at, idOrKind, one -> one.alarm().unshelve(at, one.saidBy()));
  }

  /** Closes a latched alarm. */
  public List<Standing> reset(Moment at, String idOrKind) {
    return does(at, idOrKind, one -> one.alarm().reset());
  }

  /**
   * After a restart delays start anew; what stands goes on standing.
   *
   * @param away how long the machine was off, as far as anybody knows; it counts for what is
   *     shelved
   */
  public void resume(Moment at, Duration away) {
    for (Alarm alarm : alarms) {
      alarm.resume(last, at, away);
    }
    reach(at);
  }

  /** After a gap in one probe's readings its delays start anew. */
  public void pause(String probe) {
    for (Alarm alarm : alarms) {
      if (alarm.probe().equals(probe)) {
        alarm.pause();
      }
    }
  }

  /** All that are not normal, the oldest first. */
  public List<Standing> standing() {
    List<Standing> all = new ArrayList<>();
    for (Alarm alarm : alarms) {
      alarm.occurrence().ifPresent(one -> all.add(standing(alarm, one, alarm.state())));
    }
    all.sort(Comparator.comparing(Standing::since));
    return List.copyOf(all);
  }

  /** All alarms, those in service as well as the others. */
  public List<Watched> watched() {
    return alarms.stream()
        .map(one -> new Watched(one.called(), one.probe(), one.kind(), one.state()))
        .toList();
  }

  /** Whether alarms come faster than a person can answer them. */
  public boolean isFlood() {
    return burst.isFlood(last);
  }

  private Alarm continued(
      List<Alarm> before, String probe, boolean followed, Rule rule, List<Standing> changes) {
    for (Alarm alarm : before) {
      if (alarm.kind() == rule.kind() && alarm.probe().equals(probe)) {
        alarm.follow(followed);
        add(alarm, alarm.configure(rule), changes);
        return alarm;
      }
    }
    return new Alarm(rule, probe, followed);
  }

  private List<Standing> does(
      Moment at, String idOrKind, Function<Ranked, Optional<AlarmChange>> deed) {
    reach(at);
    List<Standing> changes = new ArrayList<>(1);
    for (Ranked one : ranked) {
      Alarm alarm = one.alarm();
      add(alarm, alarm.expire(at, one.saidBy()), changes);
      if (alarm.isMeant(idOrKind)) {
        add(alarm, deed.apply(one), changes);
      }
    }
    return changes;
  }

  private void add(Alarm alarm, Optional<AlarmChange> change, List<Standing> changes) {
    if (change.isEmpty()) {
      return;
    }
    AlarmChange made = change.get();
    String id = made.occurrence().id();
    if (made.state() == AlarmState.UNACKNOWLEDGED && !made.reminder()) {
      burst.raised(id, last);
    } else if (made.state() == AlarmState.NORMAL) {
      burst.closed(id);
    }
    changes.add(standing(alarm, made.occurrence(), made.state(), made.message(), made.reminder()));
  }

  private Standing over(Alarm alarm, Occurrence one) {
    burst.closed(one.id());
    return standing(alarm, one, AlarmState.NORMAL);
  }

  private Standing standing(Alarm alarm, Occurrence one, AlarmState state) {
    return standing(alarm, one, state, one.message(), false);
  }

  private Standing standing(
      Alarm alarm, Occurrence one, AlarmState state, String message, boolean reminder) {
    return new Standing(
        one.id(),
        alarm.probe(),
        alarm.kind(),
        state,
        one.since(),
        message,
        one.seenAt(),
        one.shelf().map(Shelf::until),
        one.by(),
        burst.cameFirst(one.id()),
        reminder);
  }
}
