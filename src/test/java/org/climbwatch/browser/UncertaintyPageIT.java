package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.web.FakeBackend;
import org.climbwatch.web.WebServer;
import org.climbwatch.web.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Where the number's uncertainty comes from, as a person sees it on a phone. */
@Timeout(120)
class UncertaintyPageIT {
  private static final Duration SOON = Duration.ofSeconds(20);

  private FakeBackend backend;
  private WebServer server;
  private Browser browser;
  private String address;

  @BeforeEach
  void open() throws IOException {
    backend = StonewareFiring.climbing();
    server = new WebServer(new WebSettings("127.0.0.1", 0, Optional.empty(), List.of()), backend);
    address = "http://127.0.0.1:" + server.start() + "/";
    browser = new Browser(Browser.PHONE);
  }

  @AfterEach
  void close() throws IOException {
    browser.close();
    server.close();
  }

  private String text(String id) {
    return browser.driver().findElement(By.id(id)).getText();
  }

  private void await(String id, String part) {
    new WebDriverWait(browser.driver(), SOON).until(driver -> text(id).contains(part));
  }

  @Test
  void numberLeadsToWhatItsUncertaintyIsMadeOf() throws IOException {
    backend.measure(1004, 118);
    browser.driver().get(address);
    await("uncertainty", "±");
    await("checked", "Never checked");

    browser.driver().findElement(By.id("uncertainty")).click();

    await("result", "1004 ± ");
    await("checked", "Never checked");
    assertThat(text("components")).contains("wire", "cold junction", "u ");
    assertThat(text("sum")).contains("Together u = ", "times 2 = ");
    assertThat(text("notes")).contains("What a used couple has drifted is not counted.");
    assertThat(browser.consoleErrors()).isEmpty();
    Number overflow =
        (Number)
            browser
                .driver()
                .executeScript(
                    "return document.documentElement.scrollWidth"
                        + " - document.documentElement.clientWidth");
    assertThat(overflow.intValue()).isLessThanOrEqualTo(0);
    browser.screenshot(Path.of("target/screenshots/uncertainty-phone.png"));
  }

  @Test
  void aCheckedProbeSaysWhenAndAFaultyOneHasNoNumber() {
    backend.check(Instant.parse("2026-11-20T12:00:00Z"));
    backend.fail(Fault.OPEN_CIRCUIT);

    browser.driver().get(address + "uncertainty.html?probe=top");

    await("result", "No temperature at the moment");
    assertThat(text("checked")).contains("Last checked", "2026", "Ann: ice point");
    assertThat(browser.driver().findElement(By.id("parts")).isDisplayed()).isFalse();
  }

  @Test
  void aProbeThatIsNotThereIsTold() {
    browser.driver().get(address + "uncertainty.html?probe=nowhere");

    await("result", "There is no probe");
  }
}
