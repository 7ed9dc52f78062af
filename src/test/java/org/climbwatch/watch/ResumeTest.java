package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;

/** What the kept inputs alone lead to is what all of them led to, wherever they are cut. */
class ResumeTest {
  private static final List<Input> EVENING =
      new Script(18)
          .climb(0, 5400)
          .climb(250, 2400)
          .deed(at -> new Input.Noted(at, "pack of cones seen"))
          .climb(150, 5400)
          .faulty(Fault.OPEN_CIRCUIT, 40)
          .climb(150, 1800)
          .climb(0, 1500)
          .deed(at -> new Input.Acknowledged(at, "climb_stalled", "Ann"))
          .deed(at -> new Input.Shelved(at, "climb_stalled", shelving(5)))
          .climb(0, 900)
          .climb(200, 3000)
          .deed(at -> new Input.Declared(at, Phase.HOLDING))
          .climb(0, 1200)
          .climb(-1500, 240)
          .deed(at -> new Input.Acknowledged(at, "falling", new Signature("Bo", "burner 2 lit")))
          .climb(300, 400)
          .deed(at -> new Input.Reset(at, "falling", Signature.NOBODY))
          .deed(at -> new Input.Shelved(at, "falling", shelving(240)))
          .climb(-1500, 240)
          .deed(at -> new Input.Declared(at, Phase.COOLING))
          .climb(-250, 9000)
          .deed(Input.Ended::new)
          .climb(-30, 3600)
          .reboot(Duration.ofMinutes(10))
          .climb(-30, 5000)
          .inputs();

  private static Shelving shelving(long minutes) {
    return new Shelving(Duration.ofMinutes(minutes), new Signature("Ann", "wind"));
  }

  @Property(tries = 60)
  void goingThroughTheKeptInputsAgainLeadsToTheSamePlace(
      @ForAll @IntRange(min = 1, max = 36_000) int wanted) {
    int cut = Math.min(wanted, EVENING.size() - 1);
    Watch uninterrupted = new Watch(Script.SETTINGS);
    Watch resumed = new Watch(Script.SETTINGS);
    List<Event> before = new ArrayList<>();
    List<Event> again = new ArrayList<>();
    for (Input input : EVENING.subList(0, cut)) {
      Outcome outcome = uninterrupted.accept(input);
      before.addAll(outcome.events());
      if (outcome.kept()) {
        again.addAll(resumed.accept(input).events());
      }
    }
    List<Input> rest = EVENING.subList(cut, EVENING.size());

    assertThat(again).isEqualTo(before);
    assertThat(Script.eventsOf(resumed, rest)).isEqualTo(Script.eventsOf(uninterrupted, rest));
    assertThat(resumed.view()).isEqualTo(uninterrupted.view());
  }

  @Property(tries = 1)
  void theEveningHasSomethingToLose() {
    assertThat(Script.eventsOf(new Watch(Script.SETTINGS), EVENING)).hasSizeGreaterThan(20);
  }
}
