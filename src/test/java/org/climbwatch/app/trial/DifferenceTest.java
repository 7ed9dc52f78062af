package org.climbwatch.app.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.climbwatch.app.trial.Difference.Verdict;
import org.junit.jupiter.api.Test;

class DifferenceTest {
  private static final long MIN = 60_000;

  private static Fired stall(long minute) {
    return new Fired("climb_stalled", minute * MIN, "=stalled, \"no\" climb");
  }

  @Test
  void saysWhatIsTheSameEarlierLaterNewAndGone() {
    List<Difference> differences =
        Difference.between(
            List.of(stall(10), stall(100), stall(300), stall(500)),
            List.of(stall(10), stall(95), stall(320), new Fired("falling", 400 * MIN, "falls")));

    assertThat(differences)
        .extracting(Difference::verdict)
        .containsExactly(Verdict.SAME, Verdict.EARLIER, Verdict.LATER, Verdict.NEW, Verdict.GONE);
    assertThat(differences)
        .extracting(Difference::shiftMs)
        .containsExactly(0L, -5 * MIN, 20 * MIN, 0L, 0L);
  }

  @Test
  void occurrencesMoreThanAnHourApartAreNotTheSameOne() {
    assertThat(Difference.between(List.of(stall(10)), List.of(stall(90))))
        .extracting(Difference::verdict)
        .containsExactly(Verdict.GONE, Verdict.NEW);
  }

  /** With a lower limit it comes hours before, and stands still when the old one came. */
  @Test
  void whatStoodWhenTheOtherCameIsTheSameOneHoweverFarApart() {
    Fired early = stall(10).over(Long.MAX_VALUE);
    Fired late = stall(190).over(200 * MIN);

    assertThat(Difference.between(List.of(late), List.of(early)))
        .extracting(Difference::verdict, Difference::shiftMs)
        .containsExactly(tuple(Verdict.EARLIER, -180 * MIN));
    assertThat(Difference.between(List.of(early), List.of(late)))
        .extracting(Difference::verdict)
        .containsExactly(Verdict.LATER);
    assertThat(Difference.between(List.of(late), List.of(early.over(190 * MIN))))
        .extracting(Difference::verdict)
        .containsExactly(Verdict.NEW, Verdict.GONE);
  }

  @Test
  void anOccurrenceCountsOnceAndStandsUntilItHasGone() {
    Raised raised = new Raised();
    raised.changed("falling-1-0", "unacknowledged", 10, "first");
    raised.changed("falling-1-0", "acknowledged", 20, "");
    raised.changed("sagging-1-0", "normal", 25, "it was there before");
    raised.changed("falling-1-0", "returned_unacknowledged", 30, "");
    raised.changed("falling-1-0", "normal", 40, "");
    assertThat(raised.all()).containsExactly(new Fired("falling", 10, 30, "first"));

    raised.changed("falling-1-0", "unacknowledged", 50, "again");

    assertThat(raised.all()).containsExactly(new Fired("falling", 10, Long.MAX_VALUE, "first"));
  }

  @Test
  void alarmsOfTwoProbesAreNotTakenForEachOther() {
    Fired upper = new Fired(Fired.alarmOf("probe_fault-3-4000"), 0, "");
    Fired lower = new Fired(Fired.alarmOf("probe_fault-3-4000-lower-left"), 0, "");

    assertThat(lower.alarm()).isEqualTo("probe_fault-lower-left");
    assertThat(Difference.between(List.of(upper), List.of(lower)))
        .extracting(Difference::verdict)
        .containsExactlyInAnyOrder(Verdict.GONE, Verdict.NEW);
  }

  @Test
  void tableAndCsvShowThem() {
    List<TrialReport.Tried> all =
        List.of(
            new TrialReport.Tried(
                "7",
                "stoneware, late",
                Difference.between(List.of(stall(100)), List.of(stall(95)))),
            new TrialReport.Tried("8", "glaze", List.of()));
    StringWriter table = new StringWriter();
    TrialReport.table(all, new PrintWriter(table, true));
    StringWriter csv = new StringWriter();
    TrialReport.csv(all, new PrintWriter(csv, true));

    assertThat(table.toString())
        .contains("climb_stalled", "1:40:00", "1:35:00", "5 min earlier")
        .contains("2 firings: 0 same, 1 earlier, 0 later, 0 new, 0 gone.");
    assertThat(csv.toString())
        .isEqualTo(
            "firing,name,alarm,was_s,would_s,change,message\r\n"
                + "7,\"stoneware, late\",climb_stalled,6000.000,5700.000,earlier,"
                + "\"'=stalled, \"\"no\"\" climb\"\r\n");
  }
}
