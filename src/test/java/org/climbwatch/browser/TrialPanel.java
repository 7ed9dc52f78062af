package org.climbwatch.browser;

import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** The panel that tries other alarm limits, as a person uses it. */
final class TrialPanel extends Page {
  TrialPanel(Browser browser) {
    super(browser.driver());
  }

  boolean isOpen() {
    return byId("trial-form").isDisplayed();
  }

  void open() {
    click(driver.findElement(By.cssSelector("#trial summary")));
  }

  boolean isReady() {
    return byId("trial-start").isEnabled() && !labels().isEmpty();
  }

  /** The chosen alarm's settings: label, unit and hint of each. */
  List<String> labels() {
    return texts("#trial-settings .trial-field");
  }

  String value(String key) {
    return byId("trial-" + key).getDomProperty("value");
  }

  void write(String key, String value) {
    WebElement field = byId("trial-" + key);
    field.clear();
    field.sendKeys(value);
  }

  void chooseAlarm(String title) {
    new Select(byId("trial-rule")).selectByVisibleText(title);
  }

  List<String> firingChoices() {
    return new Select(byId("trial-firings"))
        .getOptions().stream().map(WebElement::getText).toList();
  }

  void chooseFirings(String words) {
    new Select(byId("trial-firings")).selectByVisibleText(words);
  }

  void pick(String firing) {
    driver.findElements(By.cssSelector("#trial-choice label")).stream()
        .filter(label -> label.getText().contains(firing))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no firing " + firing))
        .click();
  }

  void tryIt() {
    click(byId("trial-start"));
  }

  /** Whether it may be pressed; not while a trial is at work. */
  boolean canBegin() {
    return byId("trial-start").isEnabled();
  }

  boolean isAtWork() {
    return byId("trial-running").isDisplayed();
  }

  /** How far the trial at work is. */
  String soFar() {
    return byId("trial-so-far").getText();
  }

  void stopIt() {
    click(byId("trial-cancel"));
  }

  void download() {
    click(byId("trial-csv"));
  }

  boolean offersCsv() {
    return byId("trial-csv").isDisplayed();
  }

  String chosenFirings() {
    return new Select(byId("trial-firings")).getFirstSelectedOption().getText();
  }

  void backToTheLimitsInForce() {
    click(byId("trial-reset"));
  }

  /** Whether the browser itself finds the field's value wrong. */
  boolean refuses(String key) {
    return driver.findElements(By.cssSelector("#trial-" + key + ":invalid")).size() == 1;
  }

  String said() {
    return byId("trial-said").getText();
  }

  /** All that came of it; empty until it is over. */
  String told() {
    WebElement result = byId("trial-result");
    return result.isDisplayed() ? byId("trial-told").getText() : "";
  }

  /** The rows of the table, as text. */
  List<String> rows() {
    return texts("#trial-told tbody tr");
  }

  String toml() {
    return byId("trial-toml").getText();
  }

  String csvAddress() {
    return byId("trial-csv").getDomProperty("href");
  }

  /** Height in CSS pixels of the button that begins it. */
  int buttonHeight() {
    return byId("trial-start").getSize().height;
  }

  void scrollTo(String id) {
    scroll(byId(id), "start");
  }
}
