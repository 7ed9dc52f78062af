package org.climbwatch.browser;

import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;

/** What every part of a page is looked at and used by. */
abstract class Page {
  final WebDriver driver;

  Page(WebDriver driver) {
    this.driver = driver;
  }

  final WebElement byId(String id) {
    return driver.findElement(By.id(id));
  }

  /** Brings it into view, as a person would, and presses it. */
  final void click(WebElement element) {
    scroll(element, "center");
    element.click();
  }

  /**
   * @param block where in the window it then stands: {@code start}, {@code center}
   */
  final void scroll(WebElement element, String block) {
    ((JavascriptExecutor) driver)
        .executeScript("arguments[0].scrollIntoView({block: arguments[1]});", element, block);
  }

  /** All at one moment: the page may draw them anew between two looks. */
  @SuppressWarnings("unchecked")
  final List<String> texts(String selector) {
    return (List<String>)
        ((JavascriptExecutor) driver)
            .executeScript(
                "return [...document.querySelectorAll(arguments[0])].map(e => e.innerText.trim());",
                selector);
  }
}
