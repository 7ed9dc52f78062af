package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.time.Duration;
import java.util.List;
import org.climbwatch.packaged.DaemonProcess;
import org.climbwatch.thermocouple.Correction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Three probes of one kiln on a phone: the packaged program on the kiln model. Screenshots are left
 * in {@code target/screenshots} to be looked at.
 */
@Timeout(240)
class SeveralProbesPageIT {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Path SHOTS = Path.of("target/screenshots");
  private static final String PROBE =
      """
      [[probe]]
      name = "%s"
      source = "model"
      compared = %s
      [probe.model]
      firing = "demo"
      seed = 7
      speed = 300
      place = "%s"
      """;
  private static final String CONFIG =
      "[kiln]\nname = \"Top hat\"\ntarget_c = 1050\n"
          + PROBE.formatted("upper", "true", "upper")
          + PROBE.formatted("lower", "true", "lower")
          + PROBE.formatted("flue", "false", "flue");

  @TempDir Path folder;

  @Test
  void phoneShowsUpperLowerAndFlueEachWithItsOwnNumberAndLine() throws Exception {
    Path config = Files.writeString(folder.resolve("three.toml"), CONFIG);
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, folder.resolve("data"));
        Browser browser = new Browser(Browser.PHONE)) {
      StatusPage page = StatusPage.open(browser, daemon.url());
      page.awaitThat("a number", PATIENCE, () -> page.degrees().matches("\\d+"));
      page.awaitThat("three lines", PATIENCE, () -> page.curveLines().size() == 3);
      page.awaitThat("a curve", PATIENCE, page::curveIsDrawn);

      page.awaitThat(
          "the other probes' numbers",
          PATIENCE,
          () ->
              String.join("|", page.otherProbes())
                  .matches("(?s)lower\\s+\\d+ ± \\d+ °C\\|flue\\s+\\d+ ± \\d+ °C"));
      page.awaitThat(
          "whose line is whose",
          PATIENCE,
          () -> String.join("|", page.curveLines()).matches("\\S+ upper\\|\\S+ lower\\|\\S+ flue"));
      page.awaitThat(
          "a card for each, with its check",
          PATIENCE,
          () ->
              page.probeCards().size() == 3
                  && page.probeCards().stream().allMatch(card -> card.contains("Never checked")));
      assertThat(page.checked()).isEqualTo("Never checked");
      assertThat(page.fitsItsWidth()).isTrue();
      page.scrollTo("now");
      browser.screenshot(SHOTS.resolve("three-probes-phone-now.png"));
      page.scrollTo("curve-panel");
      browser.screenshot(SHOTS.resolve("three-probes-phone-curve.png"));
      page.scrollTo("probes-title");
      browser.screenshot(SHOTS.resolve("three-probes-phone-probes.png"));
      assertQuiet(browser);
    }
  }

  /** 20 °C were found missing after the firing: it can be seen as shown, as read, and put right. */
  @Test
  void pastFiringIsSeenWithAndWithoutACalibrationThatWasMadeAfterIt() throws Exception {
    Path config = Files.writeString(folder.resolve("three.toml"), CONFIG);
    Path data = folder.resolve("data");
    long firing;
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data)) {
      JsonNode hot = daemon.await("600 °C", status -> upperC(status) > 600);
      firing = hot.get("firing").get("id").asLong();
      assertThat(daemon.post("api/v1/firings/" + firing + "/end", "{}")).isEqualTo(200);
      assertThat(daemon.stop()).isZero();
    }
    calibrate(data.resolve("journal.sqlite"));

    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data);
        Browser browser = new Browser(Browser.PHONE)) {
      String curve = "api/v1/firings/" + firing + "/curve?points=200&calibration=";
      assertThat(peakC(daemon.get(curve + "latest")))
          .isCloseTo(peakC(daemon.get(curve + "none")) + 20, within(0.01));
      assertThat(peakC(daemon.get(curve + "recorded")))
          .isCloseTo(peakC(daemon.get(curve + "none")), within(0.01));

      StatusPage page = StatusPage.open(browser, daemon.url());
      page.awaitThat("the check", PATIENCE, () -> page.checked().startsWith("Last checked"));
      page.awaitThat("the firing", PATIENCE, () -> !page.pastFirings().isEmpty());
      page.showPastFiring(page.pastFirings().size() - 1);
      page.awaitThat("its curve", PATIENCE, page::curveIsDrawn);
      page.tellCurve("with the latest calibration");
      page.awaitThat("the hint", PATIENCE, () -> page.curveHint().contains("raw signal"));
      page.awaitThat(
          "the other curve",
          PATIENCE,
          () ->
              browser.requestedAddresses().stream()
                  .anyMatch(
                      asked ->
                          asked.contains("/firings/" + firing + "/curve")
                              && asked.endsWith("calibration=latest")));

      assertThat(page.curveCsvAddress()).endsWith("/export.csv?calibration=latest");
      assertThat(page.fitsItsWidth()).isTrue();
      page.scrollTo("curve-panel");
      browser.screenshot(SHOTS.resolve("calibrated-firing-phone.png"));
      page.tellCurve("as they were shown");
      page.awaitThat("no hint", PATIENCE, () -> page.curveHint().isEmpty());
      assertQuiet(browser);
    }
  }

  /** A stream may break off on a busy machine; the page takes it up again. */
  private static void assertQuiet(Browser browser) {
    assertThat(browser.consoleErrors()).allMatch(error -> error.contains("ERR_INCOMPLETE"));
  }

  private static double upperC(JsonNode status) {
    return status.get("probes").get(0).get("temperature_c").asDouble(0);
  }

  private static double peakC(JsonNode curve) {
    double peakC = 0;
    for (JsonNode celsius : curve.get("temperature_c")) {
      peakC = Math.max(peakC, celsius.asDouble(0));
    }
    return peakC;
  }

  /** What {@code check --calibrate} writes, which CalibrateTest leads through. */
  private static void calibrate(Path journal) throws Exception {
    Correction correction = new Correction(List.of(new Correction.Point(600, 20, 3)));
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + journal);
        PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO calibration (wall_ms, probe, who, how, points, note)"
                    + " VALUES (?, 'upper', 'Ann', 'comparison', ?, '')")) {
      insert.setLong(1, System.currentTimeMillis());
      insert.setString(2, correction.text());
      assertThat(insert.executeUpdate()).isEqualTo(1);
    }
  }
}
