package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.SignalHealth;

/** One cause, one alarm: whatever the potter and the settings do, somebody says what holds. */
class TakeOverPropertiesTest {
  private static final List<AlarmKind> OF_THE_FIRE =
      List.of(AlarmKind.CLIMB_STALLED, AlarmKind.SAGGING, AlarmKind.FALLING);
  private static final Signature ANN = new Signature("Ann", "");

  /** A climb of the kiln, or a deed to one alarm, and what follows for so many seconds. */
  record Act(String what, AlarmKind kind, int seconds) {}

  @Provide
  Arbitrary<List<Act>> evening() {
    Arbitrary<String> climbs = Arbitraries.of("150", "10", "-50", "-500");
    Arbitrary<String> deeds =
        Arbitraries.of("acknowledge", "shelve", "unshelve", "reset", "off", "on", "blind");
    return Combinators.combine(
            Arbitraries.oneOf(climbs, deeds),
            Arbitraries.of(OF_THE_FIRE),
            Arbitraries.integers().between(20, 900))
        .as(Act::new)
        .list()
        .ofSize(60);
  }

  /** The alarms of the fire alone, and what has been announced of them. */
  private static final class Kiln {
    private AlarmSettings settings = AlarmSettings.DEFAULT;
    private final Annunciator annunciator = new Annunciator(settings, List.of("upper"));
    private final TreeMap<AlarmKind, Presence> count = new TreeMap<>();
    private final EnumSet<AlarmKind> putAside = EnumSet.noneOf(AlarmKind.class);
    private double climb = 150;
    private boolean blind;
    private long millis;

    private Kiln() {
      OF_THE_FIRE.forEach(kind -> count.put(kind, new Presence()));
    }

    private void act(Act act) {
      blind = act.what().equals("blind");
      String word = act.kind().word();
      switch (act.what()) {
        case "acknowledge" -> annunciator.acknowledge(now(), word, ANN);
        case "shelve" -> {
          if (stands(act.kind())) {
            putAside.add(act.kind());
          }
          annunciator.shelve(
              now(), word, new Shelving(Duration.ofSeconds(60 + act.seconds()), ANN));
        }
        case "unshelve" -> annunciator.unshelve(now(), word);
        case "reset" -> annunciator.reset(now(), word);
        case "off", "on" -> enable(act.kind(), act.what().equals("on"));
        case "blind" -> {}
        default -> climb = Double.parseDouble(act.what());
      }
    }

    private void enable(AlarmKind kind, boolean enabled) {
      RuleSettings before = settings.of(kind);
      settings = settings.with(new RuleSettings(kind, enabled, before.numbers(), before.delays()));
      annunciator.configure(settings, List.of("upper"));
      count.put(kind, enabled ? count.get(kind) : new Presence());
    }

    /** Looks, and counts by the rules alone what is present. */
    private void look() {
      millis += 10_000;
      Situation situation = situation();
      annunciator.look(situation);
      count.forEach(
          (kind, presence) -> {
            Rule rule = rule(kind);
            presence.look(rule.look(situation, presence.present()), now(), rule.delays());
          });
    }

    private Rule rule(AlarmKind kind) {
      return Rules.of(kind).rule(settings.of(kind));
    }

    private boolean holds(AlarmKind kind) {
      return count.get(kind).present() && rule(kind).look(situation(), true) == Rule.Verdict.HOLDS;
    }

    private AlarmState state(AlarmKind kind) {
      return annunciator.watched().stream()
          .filter(one -> one.kind() == kind)
          .findFirst()
          .orElseThrow()
          .state();
    }

    private boolean stands(AlarmKind kind) {
      return annunciator.standing().stream()
          .anyMatch(one -> one.kind() == kind && one.state() != AlarmState.SHELVED);
    }

    /** Or has said, and was put aside by somebody who had seen it. */
    private boolean says(AlarmKind kind) {
      putAside.removeIf(one -> state(one) != AlarmState.SHELVED);
      return putAside.contains(kind)
          || state(kind) == AlarmState.UNACKNOWLEDGED
          || state(kind) == AlarmState.ACKNOWLEDGED;
    }

    private Moment now() {
      return new Moment(0, millis);
    }

    private Situation situation() {
      Optional<Climb> seen = blind ? Optional.empty() : Optional.of(new Climb(climb, 3));
      return new Situation(
          now(),
          "kiln",
          "upper",
          Phase.CLIMBING,
          false,
          false,
          0,
          OptionalDouble.empty(),
          OptionalDouble.of(700),
          Optional.empty(),
          seen,
          Optional.empty(),
          seen,
          OptionalDouble.of(710),
          OptionalDouble.of(710),
          new Forecast.NotYet(Forecast.Reason.TOO_EARLY),
          SignalHealth.UNKNOWN,
          false,
          Meant.NOTHING,
          Machine.UNKNOWN,
          Optional.empty());
    }
  }

  @Property(tries = 150)
  void whatHoldsIsSaidByItselfOrByWhatSaysMore(@ForAll("evening") List<Act> evening) {
    Kiln kiln = new Kiln();
    for (Act act : evening) {
      kiln.act(act);
      for (int s = 0; s < act.seconds(); s += 10) {
        kiln.look();
        for (AlarmKind kind : OF_THE_FIRE) {
          if (kiln.holds(kind) && kiln.state(kind) != AlarmState.SHELVED) {
            assertThat(
                    kiln.says(kind) || Rules.of(kind).betterSaidBy().stream().anyMatch(kiln::says))
                .as("%s is %s after %s", kind, kiln.state(kind), act)
                .isTrue();
          }
        }
      }
    }
  }

  @Property(tries = 50)
  void whatIsSwitchedOffNeverLooksOtherwise(@ForAll("evening") List<Act> evening) {
    Kiln kiln = new Kiln();
    for (Act act : evening) {
      kiln.act(act);
      for (int s = 0; s < act.seconds(); s += 10) {
        kiln.look();
        OF_THE_FIRE.stream()
            .filter(kind -> !kiln.settings.of(kind).enabled())
            .forEach(
                kind ->
                    assertThat(kiln.state(kind))
                        .isNotIn(AlarmState.NORMAL, AlarmState.SUPPRESSED_BY_DESIGN));
      }
    }
  }
}
