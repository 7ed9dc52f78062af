package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.climbwatch.app.RecordedFirings;
import org.climbwatch.packaged.DaemonProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A potter tries an earlier stall alarm on past firings: the packaged program, a journal of two
 * firings of the kiln model, a phone. Screenshots are left in {@code target/screenshots} to be
 * looked at.
 */
@Timeout(240)
class TrialPageIT {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Path SHOTS = Path.of("target/screenshots");
  private static final String CONFIG =
      "[kiln]\nname = \"Meadow Lane top-hat\"\ntarget_c = 1270\n[[probe]]\nsource = \"model\"\n";

  @TempDir Path folder;

  @Test
  void otherLimitsAreTriedAndTellWhatReplayTells() throws Exception {
    Path config = Files.writeString(folder.resolve("kiln.toml"), CONFIG);
    Path data = Files.createDirectories(folder.resolve("data"));
    RecordedFirings.stalledThenHealthy(CONFIG, data.resolve("journal.sqlite"));
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data);
        Browser browser = new Browser(Browser.PHONE)) {
      StatusPage page = StatusPage.open(browser, daemon.url());
      page.awaitThat("a number", PATIENCE, () -> page.degrees().matches("\\d+"));
      TrialPanel panel = new TrialPanel(browser);
      assertThat(panel.isOpen()).isFalse();
      assertThat(browser.requestedAddresses()).noneMatch(url -> url.contains("alarm-settings"));

      panel.open();
      page.awaitThat("its settings", PATIENCE, panel::isReady);
      startsWithTheLimitsInForce(panel);
      refusesWhatIsOutOfRange(panel);
      panel.write("on_delay_s", "300");
      panel.scrollTo("trial-title");
      browser.screenshot(SHOTS.resolve("trial-phone-form.png"));
      panel.tryIt();
      page.awaitThat("the result", PATIENCE, () -> !panel.told().isEmpty());

      tellsInPlainWords(panel);
      assertThat(page.fitsItsWidth()).isTrue();
      assertThat(panel.buttonHeight()).isGreaterThanOrEqualTo(48);
      panel.scrollTo("trial-result");
      browser.screenshot(SHOTS.resolve("trial-phone-result.png"));
      panel.scrollTo("trial-csv");
      browser.screenshot(SHOTS.resolve("trial-phone-toml.png"));
      sameAsReplay(daemon, panel, data);

      browser.resize(Browser.DESKTOP);
      panel.scrollTo("trial-title");
      browser.screenshot(SHOTS.resolve("trial-desktop.png"));
      assertThat(page.fitsItsWidth()).isTrue();
      browser.prefersColorScheme("dark");
      panel.scrollTo("trial-result");
      browser.screenshot(SHOTS.resolve("trial-desktop-dark.png"));
      anotherAlarmOnOneFiring(page, panel);
      assertThat(browser.consoleErrors()).isEmpty();
      assertThat(daemon.get("api/v1/alarm-settings").toString())
          .contains("\"key\":\"on_delay_s\",\"value\":600,\"usual\":600");
    }
  }

  private static void startsWithTheLimitsInForce(TrialPanel panel) {
    assertThat(panel.value("least_climb_c_per_h")).isEqualTo("20");
    assertThat(panel.value("on_delay_s")).isEqualTo("600");
    assertThat(panel.labels().get(0))
        .contains("A climb slower than this counts as stalled", "°C/h", "now 20, allowed 1 to 500");
    assertThat(panel.labels().get(3)).contains("now 600 (10 min), allowed 0 to 7200");
    assertThat(panel.firingChoices())
        .containsExactly("the last one", "all 2", "those that I choose");
  }

  private static void refusesWhatIsOutOfRange(TrialPanel panel) {
    panel.write("on_delay_s", "7201");
    assertThat(panel.refuses("on_delay_s")).isTrue();
    panel.tryIt();
    assertThat(panel.told()).isEmpty();
    panel.backToTheLimitsInForce();
    assertThat(panel.value("on_delay_s")).isEqualTo("600");
    assertThat(panel.refuses("on_delay_s")).isFalse();
  }

  private static void tellsInPlainWords(TrialPanel panel) {
    assertThat(panel.told())
        .startsWith("Tried on 2 firings.\nClimb has stalled: 1 earlier.")
        .containsPattern("stoneware STALL, lit \\w+ \\d+, \\d+, \\d+:\\d+ [AP]M")
        .containsPattern("stoneware NONE, lit \\w+ \\d+, \\d+, \\d+:\\d+ [AP]M");
    assertThat(panel.told())
        .contains("not how long it stands", "at the same time")
        .doesNotContain("the same\n", "the same.");
    List<String> stalls =
        panel.rows().stream().filter(row -> row.startsWith("Climb has stalled")).toList();
    assertThat(stalls).hasSize(1);
    assertThat(stalls.get(0))
        .matches(
            "(?s)Climb has stalled\\s+came at 5:43 · would come at 5:38\\s+"
                + "would have come 5 min earlier");
    assertThat(panel.toml())
        .isEqualTo(
            "[alarm.climb_stalled]\nenabled = true\nleast_climb_c_per_h = 20\nfrom_c = 200\n"
                + "patience_min = 20\non_delay_s = 300  # was 600\noff_delay_s = 120");
  }

  /** With the page's own lines in a settings file, the command line gives the page's own CSV. */
  private void sameAsReplay(DaemonProcess daemon, TrialPanel panel, Path data) throws Exception {
    Path config = Files.writeString(folder.resolve("tried.toml"), CONFIG + panel.toml() + "\n");

    DaemonProcess.Finished replayed =
        DaemonProcess.command(
            folder,
            "replay",
            "--firings",
            "2,1",
            "--config",
            config.toString(),
            "--data",
            data.toString(),
            "--format",
            "csv");

    assertThat(replayed.exit()).as(replayed.err()).isZero();
    String path = URI.create(panel.csvAddress()).getPath().substring(1);
    assertThat(daemon.text(path)).isEqualTo(replayed.out()).contains(",earlier,");
  }

  private static void anotherAlarmOnOneFiring(StatusPage page, TrialPanel panel) {
    panel.chooseAlarm("Climbing too fast");
    panel.write("limit_c_per_h", "60");
    panel.chooseFirings("those that I choose");
    panel.tryIt();
    page.awaitThat(
        "a word on the choice", PATIENCE, () -> panel.said().equals("Choose 1 to 20 firings."));
    panel.pick("stoneware NONE");
    panel.tryIt();
    page.awaitThat(
        "what would be new",
        PATIENCE,
        () ->
            panel.told().startsWith("Tried on 1 firing.")
                && panel.told().contains("would have come; it did not"));
    assertThat(panel.told()).doesNotContain("stoneware STALL");
    assertThat(panel.toml()).contains("\nlimit_c_per_h = 60  # was 500\n");
  }
}
