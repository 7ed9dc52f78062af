package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.climbwatch.packaged.DaemonProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Dimension;

/**
 * The packaged program's page in a real browser, on the kiln model's stalling firing. Screenshots
 * are left in {@code target/screenshots} to be looked at.
 */
class PackagedPageIT {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Path SHOTS = Path.of("target/screenshots");
  private static final String CONFIG =
      """
      [kiln]
      name = "Top hat"
      target_c = 1050
      [[probe]]
      name = "upper"
      source = "model"
      [probe.model]
      firing = "demo"
      seed = 7
      speed = 300
      [alarm.climb_too_fast]
      limit_c_per_h = 800
      """;

  @TempDir Path folder;

  @Test
  void phoneSeesTheStallAnswersItAndWritesANote() throws Exception {
    watchAStall(Browser.PHONE, "phone");
  }

  @Test
  void desktopSeesTheStallAnswersItAndWritesANote() throws Exception {
    watchAStall(Browser.DESKTOP, "desktop");
  }

  private void watchAStall(Dimension size, String name) throws Exception {
    Path config = Files.writeString(folder.resolve("page.toml"), CONFIG);
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, folder.resolve("data"));
        Browser browser = new Browser(size)) {
      StatusPage page = StatusPage.open(browser, daemon.url());
      page.awaitThat("a number", PATIENCE, () -> page.degrees().matches("\\d+"));
      String first = page.degrees();
      page.awaitThat("another number", PATIENCE, () -> !page.degrees().equals(first));
      page.awaitThat("a curve", PATIENCE, page::curveIsDrawn);
      page.awaitThat("the stall", PATIENCE, () -> stall(page).contains("flame at every burner"));
      browser.screenshot(SHOTS.resolve(name + "-alarm.png"));

      page.acknowledge("Climb has stalled");
      page.awaitThat("the answer", PATIENCE, () -> !stall(page).contains("Not acknowledged"));
      page.writeNote("Bottle is frosted over, damper 5 cm");
      page.awaitThat(
          "the note", PATIENCE, () -> page.history().toString().contains("frosted over"));
      browser.screenshot(SHOTS.resolve(name + "-answered.png"));
      assertThat(page.fitsItsWidth()).isTrue();
      assertThat(download(page.csvAddress())).startsWith("time,elapsed_s,").contains("frosted");

      daemon.kill();
      page.awaitThat("that contact is lost", PATIENCE, () -> !page.lostContactBanner().isEmpty());
      browser.screenshot(SHOTS.resolve(name + "-lost.png"));
      assertThat(otherHosts(browser, daemon.url())).isEmpty();
      assertThat(browser.consoleErrors())
          .allMatch(
              error ->
                  error.contains("ERR_CONNECTION_REFUSED") || error.contains("ERR_INCOMPLETE"));
    }
  }

  private static String stall(StatusPage page) {
    return page.alarms().stream()
        .filter(alarm -> alarm.contains("Climb has stalled"))
        .findFirst()
        .orElse("");
  }

  private static List<String> otherHosts(Browser browser, String own) {
    return browser.requestedAddresses().stream()
        .filter(address -> address.startsWith("http") && !address.startsWith(own))
        .toList();
  }

  private static String download(String address) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(address)).build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }
}
