package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.Rules;
import org.climbwatch.web.FakeBackend;
import org.climbwatch.web.FakeTrials;
import org.climbwatch.web.TrialOrder;
import org.climbwatch.web.TrialSoFar.State;
import org.climbwatch.web.TriedFiring;
import org.climbwatch.web.WebServer;
import org.climbwatch.web.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Two people at the trial panel: Berta before a real browser, Alma elsewhere. */
@Timeout(120)
class TrialPanelIT {
  private static final Duration SOON = Duration.ofSeconds(10);

  private FakeBackend backend;
  private FakeTrials trials;
  private WebServer server;
  private Browser browser;
  private StatusPage page;
  private TrialPanel panel;

  @BeforeEach
  void open() throws IOException {
    backend = StonewareFiring.idle();
    trials = backend.trials();
    server = new WebServer(new WebSettings("127.0.0.1", 0, Optional.empty(), List.of()), backend);
    browser = new Browser(Browser.PHONE);
    page = StatusPage.open(browser, "http://127.0.0.1:" + server.start() + "/");
    panel = new TrialPanel(browser);
    openPanel();
  }

  @AfterEach
  void close() throws IOException {
    browser.close();
    server.close();
  }

  private void openPanel() {
    panel.open();
    page.awaitThat("the panel", SOON, () -> panel.isOpen() && !panel.labels().isEmpty());
  }

  /** Alma begins a trial of another alarm, from another window. */
  private void almaBegins() {
    RuleChange falling =
        new RuleChange(Rules.of(AlarmKind.FALLING), Optional.empty(), Map.of("drop_c", 7.0));
    trials.begin(new TrialOrder(List.of(falling), List.of(), OptionalInt.of(1)));
  }

  private List<TriedFiring> triedOn(long firing) {
    TriedFiring.Alarm alarm =
        new TriedFiring.Alarm(
            AlarmKind.CLIMB_STALLED,
            Optional.empty(),
            OptionalDouble.of(9000),
            OptionalDouble.of(8700),
            "earlier",
            "Seen.");
    return List.of(new TriedFiring(backend.firing(firing).orElseThrow(), List.of(alarm)));
  }

  private void tryAndGet(int number, List<TriedFiring> results) {
    panel.tryIt();
    page.awaitThat("the order", SOON, () -> trials.taken() == number && panel.isAtWork());
    trials.stand(State.DONE, results);
    page.awaitThat("the result", SOON, () -> !panel.told().isEmpty());
  }

  @Test
  void whoIsRefusedSeesTheOtherTrialAndItsEnd() {
    almaBegins();

    panel.tryIt();

    page.awaitThat("the refusal", SOON, () -> panel.said().contains("Trial 1 is at it"));
    page.awaitThat(
        "how far it is",
        SOON,
        () ->
            panel
                .soFar()
                .equals("Another trial (Falling: the flame may be out): 0 of 2 done, 12 s"));
    assertThat(panel.canBegin()).isFalse();

    trials.stand(State.DONE, triedOn(2));

    page.awaitThat("its end", SOON, panel::canBegin);
    assertThat(panel.said()).isEqualTo("The other trial is over: yours can begin now.");
    assertThat(panel.isAtWork()).isFalse();
    assertThat(panel.told())
        .startsWith(
            "This trial was begun by somebody else, or in another window.\nTried on 2 firings.");

    tryAndGet(2, triedOn(1));
    assertThat(panel.told()).startsWith("Tried on 2 firings.").contains("Bisque, first load");
    assertThat(page.fitsItsWidth()).isTrue();
  }

  @Test
  void whoIsRefusedMayStopTheOtherTrial() {
    almaBegins();
    panel.tryIt();
    page.awaitThat("the other trial", SOON, panel::isAtWork);

    panel.stopIt();

    page.awaitThat("its end", SOON, panel::canBegin);
    assertThat(trials.one(1).orElseThrow().state()).isEqualTo(State.CANCELLED);
    assertThat(panel.told()).contains("Ended before its time: 0 of 2 firings tried.");
  }

  @Test
  void aTrialThatIsAtWorkIsSeenByWhoOpensThePanel() {
    panel.open();
    almaBegins();

    openPanel();

    page.awaitThat("the other trial", SOON, panel::isAtWork);
    assertThat(panel.canBegin()).isFalse();
  }

  @Test
  void myResultStaysWhileAndAfterAnotherIsAtWork() {
    tryAndGet(1, triedOn(1));
    String mine = panel.told();
    almaBegins();

    panel.tryIt();
    page.awaitThat("the other trial", SOON, panel::isAtWork);
    assertThat(panel.told()).isEqualTo(mine);
    trials.stand(State.DONE, triedOn(2));

    page.awaitThat("its end", SOON, panel::canBegin);
    assertThat(panel.told()).isEqualTo(mine);
    assertThat(panel.csvAddress()).endsWith("/trials/1/differences.csv");
  }

  /** The page looks every 400 ms. */
  @Test
  void myResultIsShownWhenAnotherTrialHasBegunInTheSameInstant() {
    panel.tryIt();
    page.awaitThat("the order", SOON, panel::isAtWork);

    synchronized (trials) {
      trials.stand(State.DONE, triedOn(1));
      almaBegins();
    }

    page.awaitThat("my result", SOON, () -> panel.told().contains("Bisque, first load"));
    assertThat(panel.said()).isEmpty();
  }

  @Test
  void aTrialThatIsGoneBehindARestartIsTold() {
    panel.tryIt();
    page.awaitThat("the order", SOON, panel::isAtWork);

    trials.forget();
    almaBegins();

    page.awaitThat("a word on it", SOON, () -> panel.said().startsWith("That trial is not there"));
    assertThat(panel.isAtWork()).isFalse();
  }

  @Test
  void aResultIsDownloadedWhileItIsThereAndElseTold() {
    tryAndGet(1, triedOn(1));
    String address = browser.driver().getCurrentUrl();

    panel.download();
    page.awaitThat("the download", SOON, () -> trials.written() == 1);
    trials.forget();
    almaBegins();
    trials.stand(State.DONE, triedOn(1));
    panel.download();

    page.awaitThat("a word on it", SOON, () -> panel.said().startsWith("That trial is not there"));
    assertThat(trials.written()).isEqualTo(1);
    assertThat(panel.offersCsv()).isFalse();
    assertThat(browser.driver().getCurrentUrl()).isEqualTo(address);
  }

  @Test
  void allMeansAllAlsoWhenAnotherFiringHasEnded() {
    panel.chooseFirings("all 2");
    panel.open();
    backend.end(backend.begin("Raku, the third load"));

    openPanel();

    page.awaitThat("the new choice", SOON, () -> panel.firingChoices().contains("all 3"));
    assertThat(panel.chosenFirings()).isEqualTo("all 3");
    panel.tryIt();
    page.awaitThat("the order", SOON, () -> trials.taken() == 1);
    assertThat(trials.order().last()).isEqualTo(OptionalInt.of(3));
  }
}
