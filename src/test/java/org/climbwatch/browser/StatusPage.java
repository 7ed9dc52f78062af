package org.climbwatch.browser;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Rectangle;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** The status page as a person sees and uses it. */
public final class StatusPage extends Page {
  private static final int MOST_TRIES = 10;

  private final String address;

  private StatusPage(WebDriver driver, String address) {
    super(driver);
    this.address = address;
  }

  /**
   * Opens the page.
   *
   * @param address with a trailing slash, for instance {@code http://127.0.0.1:8080/}
   */
  public static StatusPage open(Browser browser, String address) {
    browser.driver().get(address);
    return new StatusPage(browser.driver(), address);
  }

  /** Waits until the page says so; fails with what it said instead. */
  public void awaitThat(String what, Duration atMost, Supplier<Boolean> condition) {
    long end = System.nanoTime() + atMost.toNanos();
    while (!holds(condition)) {
      if (System.nanoTime() > end) {
        throw new AssertionError(
            "waited "
                + atMost.toSeconds()
                + " s in vain for: "
                + what
                + "; the page says:\n"
                + driver.findElement(By.tagName("body")).getText());
      }
      LockSupport.parkNanos(50_000_000);
    }
  }

  private static boolean holds(Supplier<Boolean> condition) {
    try {
      return condition.get();
    } catch (StaleElementReferenceException replaced) {
      return false; // the page drew it anew between two looks
    }
  }

  /** The big number in °C; empty while there is none. */
  public String degrees() {
    return text("degrees");
  }

  /** Where the number would be: why there is none; empty while there is one. */
  public String reasonForNoTemperature() {
    return text("reason");
  }

  public String uncertainty() {
    return text("uncertainty");
  }

  public String climb() {
    return text("climb");
  }

  public String phase() {
    return text("phase");
  }

  public String sinceLighting() {
    return text("elapsed");
  }

  /** When the target comes, if the fire burns on like this. */
  public String arrival() {
    return text("arrival");
  }

  /** Where the fire levels off, if it burns on like this. */
  public String level() {
    return text("level");
  }

  public String arrivalInterval() {
    return text("arrival-interval");
  }

  public String levelInterval() {
    return text("level-interval");
  }

  public String aheadHint() {
    return text("ahead-line");
  }

  /** The page's clock goes forward, as over a phone's sleep. */
  public void sleep(Duration time) {
    ((JavascriptExecutor) driver)
        .executeScript(
            "const before = Date.now.bind(Date); Date.now = () => before() + arguments[0];",
            time.toMillis());
  }

  /** What the browser's tab says. */
  public String tab() {
    return driver.getTitle();
  }

  /** The banner's words; empty while there is contact. */
  public String lostContactBanner() {
    return text("contact");
  }

  /** How an action went. */
  public String said() {
    return text("said");
  }

  public String soundHint() {
    return text("sound-hint");
  }

  public String soundButton() {
    return text("sound");
  }

  /** The whole text of each alarm, in the order shown. */
  public List<String> alarms() {
    return texts("#alarms article");
  }

  /** The headings of the alarms, in the order shown. */
  public List<String> alarmTitles() {
    return texts("#alarms article h2");
  }

  /** The lines of the firing's history, the newest first. */
  public List<String> history() {
    return texts("#history li");
  }

  /** The firings so far, the newest first. */
  public List<String> pastFirings() {
    return texts("#past li");
  }

  /** The alarms marked on the curve. */
  public List<String> curveMarks() {
    return texts("#curve-marks li");
  }

  /** The other probes than the followed one, each with what it reads. */
  public List<String> otherProbes() {
    return texts("#other-probes li");
  }

  /** Whose line is drawn how, where there are several. */
  public List<String> curveLines() {
    return texts("#curve-lines li");
  }

  /** Each probe with what was found about it and what it has been through. */
  public List<String> probeCards() {
    return texts("#probes li");
  }

  public String checked() {
    return text("checked");
  }

  /** Chooses which calibration the curve is told with, by the words of the page. */
  public void tellCurve(String by) {
    new Select(byId("curve-by")).selectByVisibleText(by);
  }

  public String curveHint() {
    return text("curve-by-hint");
  }

  /** Where the CSV of the curve as it is told is to be had. */
  public String curveCsvAddress() {
    return byId("curve-csv").getDomProperty("href");
  }

  /** Scrolls to a panel. */
  public void scrollTo(String id) {
    scroll(byId(id), "start");
  }

  /** Whether a curve is drawn. */
  public boolean curveIsDrawn() {
    return !driver.findElements(By.cssSelector("#curve canvas")).isEmpty();
  }

  /** Height in CSS pixels of the big number's line. */
  public int numberHeight() {
    return byId("degrees").getSize().height;
  }

  /** How far below the page's upper edge the first answer button ends, in CSS pixels. */
  public int acknowledgeBottom() {
    Rectangle button = driver.findElement(By.cssSelector(".acknowledge")).getRect();
    return button.y + button.height;
  }

  public void acknowledge(String title) {
    insist(() -> ready(title, ".acknowledge:not(.reset)").click());
  }

  /** Opens what a card offers beside its big button. */
  public void openAside(String title) {
    insist(
        () -> {
          WebElement aside = card(title).findElement(By.cssSelector(".aside"));
          if (aside.getDomAttribute("open") == null) {
            click(aside.findElement(By.cssSelector("summary")));
          }
        });
  }

  public void sign(String title, String who, String note) {
    openAside(title);
    write(title, ".who", who);
    write(title, ".alarm-note-field", note);
  }

  /** What is written in a card's note field and not sent yet. */
  public String draft(String title) {
    return card(title).findElement(By.cssSelector(".alarm-note-field")).getDomProperty("value");
  }

  /** What is written in the firing's note field and not sent yet. */
  public String firingNote() {
    return byId("note").getDomProperty("value");
  }

  /** The same, where it can be seen. */
  public String visibleNote() {
    if (!byId("note").isDisplayed()) {
      throw new AssertionError("the firing's note is not to be seen");
    }
    return firingNote();
  }

  /** What is written over the firing's note field. */
  public String noteLabel() {
    return text("note-label");
  }

  /** Writes on in the firing's note field and does not send it. */
  public void beginNote(String text) {
    byId("note").sendKeys(text);
  }

  /** Sends the note of a card that is answered already. */
  public void writeDown(String title) {
    insist(() -> ready(title, ".write-down").click());
  }

  /** Whether the keys that are pressed now go into a card's note field, on its open aside. */
  public boolean isWriting(String title) {
    WebElement note = card(title).findElement(By.cssSelector(".alarm-note-field"));
    return note.isDisplayed() && note.equals(driver.switchTo().activeElement());
  }

  /** Types where the focus is. */
  public void type(String text) {
    driver.switchTo().activeElement().sendKeys(text);
  }

  /**
   * @param time as the page words it
   */
  public void shelve(String title, String time) {
    openAside(title);
    insist(
        () -> {
          WebElement times = card(title).findElement(By.cssSelector(".shelve-time"));
          new Select(times).selectByVisibleText(time);
          click(card(title).findElement(By.cssSelector(".shelve")));
        });
  }

  public void reset(String title) {
    insist(() -> click(ready(title, ".reset")));
  }

  /** Presses the button for the reset in the very moment in which it comes to stand there. */
  public void tapTheResetAsItAppears() {
    ((JavascriptExecutor) driver)
        .executeScript(
            """
            const button = document.querySelector('.reset');
            window.tapped = 0;
            new MutationObserver(() => {
              if (!button.hidden && window.tapped === 0) {
                window.tapped += 1;
                button.click();
              }
            }).observe(button, { attributes: true });""");
  }

  public boolean hasTapped() {
    return (Boolean) ((JavascriptExecutor) driver).executeScript("return window.tapped > 0;");
  }

  /** A button that has just come to stand there takes no press for a moment. */
  private WebElement ready(String title, String selector) {
    awaitThat(
        selector + " of " + title,
        Duration.ofSeconds(20),
        () -> {
          WebElement button = card(title).findElement(By.cssSelector(selector));
          return button.isDisplayed() && button.isEnabled();
        });
    return card(title).findElement(By.cssSelector(selector));
  }

  /** What is said of alarms that do not look now. */
  public String unwatched() {
    return text("switched-off") + text("suppressed");
  }

  /** The flood's banner; empty while there is none. */
  public String floodBanner() {
    return text("flood");
  }

  public void toTheTop() {
    ((JavascriptExecutor) driver).executeScript("window.scrollTo(0, 0);");
  }

  /** Counts every tone of the page from now on; to be called before the sound is pressed. */
  public void countTones() {
    ((JavascriptExecutor) driver)
        .executeScript(
            "window.tones = 0; const make = AudioContext.prototype.createOscillator;"
                + "AudioContext.prototype.createOscillator = function () {"
                + " window.tones += 1; return make.call(this); };");
  }

  public long tones() {
    return ((Number) ((JavascriptExecutor) driver).executeScript("return window.tones;"))
        .longValue();
  }

  /** The page's clock goes forward, as if that time had passed. */
  public void skipAhead(int seconds) {
    ((JavascriptExecutor) driver)
        .executeScript(
            "const now = Date.now; const ms = arguments[0] * 1000; Date.now = () => now() + ms;",
            seconds);
  }

  private void write(String title, String field, String text) {
    insist(
        () -> {
          WebElement into = card(title).findElement(By.cssSelector(field));
          into.clear();
          into.sendKeys(text);
        });
  }

  /** As a person does whose card was drawn anew under the finger: looks, and presses again. */
  private static void insist(Runnable deed) {
    for (int tries = 1; ; tries++) {
      try {
        deed.run();
        return;
      } catch (StaleElementReferenceException drawnAnew) {
        if (tries == MOST_TRIES) {
          throw drawnAnew;
        }
      }
    }
  }

  private WebElement card(String title) {
    return driver.findElements(By.cssSelector("#alarms article")).stream()
        .filter(alarm -> alarm.getText().contains(title))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no alarm \"" + title + "\""));
  }

  /** Height in CSS pixels of the first alarm's button. */
  public int acknowledgeHeight() {
    return driver.findElement(By.cssSelector(".acknowledge")).getSize().height;
  }

  public void startFiring(String name) {
    byId("firing-name").sendKeys(name);
    press("start");
  }

  public void endFiring() {
    askToEnd();
    confirmTheEnd();
  }

  /** The first of two presses that end a firing. */
  public void askToEnd() {
    press("end");
  }

  /** The second. */
  public void confirmTheEnd() {
    press("end-confirm");
  }

  public void declareHolding() {
    press("declare-holding");
  }

  public void writeNote(String text) {
    byId("note").sendKeys(text);
    press("write-note");
  }

  public void showPastFiring(int row) {
    insist(() -> driver.findElements(By.cssSelector("#past li button")).get(row).click());
  }

  public void pressSound() {
    press("sound");
  }

  public void pressTheme() {
    press("theme");
  }

  /** The theme in force: {@code device}, {@code light} or {@code dark}. */
  public String theme() {
    return driver.findElement(By.tagName("html")).getDomAttribute("data-theme");
  }

  public boolean asksForPassphrase() {
    return byId("passphrase-dialog").isDisplayed();
  }

  public void givePassphrase(String passphrase) {
    byId("passphrase").sendKeys(passphrase);
    byId("passphrase-form").findElement(By.cssSelector("[type=submit]")).click();
  }

  /** Where the firing's CSV is to be had. */
  public String csvAddress() {
    return byId("csv").getDomProperty("href");
  }

  /** Whether anything sticks out sideways, so that a phone would have to scroll. */
  public boolean fitsItsWidth() {
    Object overhang =
        ((JavascriptExecutor) driver)
            .executeScript("return document.documentElement.scrollWidth - window.innerWidth;");
    return ((Number) overhang).intValue() <= 0;
  }

  public String address() {
    return address;
  }

  private void press(String id) {
    click(byId(id));
  }

  private String text(String id) {
    WebElement element = byId(id);
    return element.isDisplayed() ? element.getText() : "";
  }
}
