package org.climbwatch.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A real headless browser with a fresh profile. Fails where Chromium or its driver is missing: a
 * page that nobody looked at is not tested.
 */
public final class Browser implements AutoCloseable {
  /** CSS pixels of a common phone. */
  public static final Dimension PHONE = new Dimension(390, 844);

  public static final Dimension DESKTOP = new Dimension(1280, 900);

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private final Path profile;
  private final ChromeDriver driver;
  private final List<String> requests = new ArrayList<>();
  private final List<String> errors = new ArrayList<>();

  /** Opens an empty window. */
  public Browser() throws IOException {
    for (Path needed : List.of(CHROMIUM, DRIVER)) {
      if (!Files.isExecutable(needed)) {
        throw new IOException(needed + " is missing; apt install chromium chromium-driver");
      }
    }
    profile = Files.createTempDirectory("climbwatch-browser");
    // keeps the driver library from looking for a driver elsewhere
    System.setProperty("webdriver.chrome.driver", DRIVER.toString());
    driver = new ChromeDriver(options());
  }

  /** Opens an empty window whose page area has exactly that size. */
  public Browser(Dimension size) throws IOException {
    this();
    resize(size);
  }

  /** Gives the page area exactly that size. */
  public final void resize(Dimension size) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of(
            "width", size.width, "height", size.height, "deviceScaleFactor", 2, "mobile", false));
  }

  /** Leaves the page and forgets what was asked for and said so far. */
  public void clear() {
    driver.get("about:blank");
    requestedAddresses();
    consoleErrors();
    requests.clear();
    errors.clear();
  }

  private ChromeOptions options() {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-quic",
        "--user-data-dir=" + profile,
        "about:blank");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
    return options;
  }

  ChromeDriver driver() {
    return driver;
  }

  /** Every address of a host that was asked for since the browser was cleared. */
  public List<String> requestedAddresses() {
    for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
      String message = entry.getMessage();
      if (message.contains("\"Network.requestWillBeSent\"")) {
        String after = message.substring(message.indexOf("\"request\":"));
        int start = after.indexOf("\"url\":\"") + 7;
        String address = after.substring(start, after.indexOf('"', start));
        if (!address.startsWith("chrome:") && !address.startsWith("data:")) { // ask no host
          requests.add(address);
        }
      }
    }
    return List.copyOf(requests);
  }

  /** What the console has said of errors since the browser was cleared. */
  public List<String> consoleErrors() {
    for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
      if (entry.getLevel().intValue() >= Level.WARNING.intValue()) {
        errors.add(entry.getMessage());
      }
    }
    return List.copyOf(errors);
  }

  /** The theme that the device asks for: {@code light} or {@code dark}. */
  public void prefersColorScheme(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** What the window shows, as PNG. */
  public void screenshot(Path file) throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
  }

  @Override
  public void close() throws IOException {
    driver.quit();
    try (Stream<Path> files = Files.walk(profile)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }
}
