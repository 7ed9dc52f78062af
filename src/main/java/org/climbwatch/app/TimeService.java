package org.climbwatch.app;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;

/**
 * Who keeps the machine's clock right, as far as files tell it.
 *
 * <p>systemd-timesyncd makes a folder when it starts and a file in it once it has set the clock
 * (systemd-timesyncd.service(8)). Other services leave no such mark: of them nothing is known.
 */
final class TimeService {
  private static final Duration NEAR = Duration.ofMinutes(2);

  private final Path folder;
  private final Path batteryClocks;

  /**
   * @param root the machine's, {@code /}
   */
  TimeService(Path root) {
    folder = root.resolve("run/systemd/timesync");
    batteryClocks = root.resolve("sys/class/rtc");
  }

  /** Whether a service that leaves marks is running. */
  boolean isThere() {
    return Files.isDirectory(folder);
  }

  /** Whether it has had an answer since the machine started. */
  boolean hasSetTheClock() {
    return Files.exists(folder.resolve("synchronized"));
  }

  /** Whether a battery clock goes along; one that lost its battery began at 1970 or so. */
  boolean batteryClockSays(Instant wall) {
    if (!Files.isDirectory(batteryClocks)) {
      return false;
    }
    try (DirectoryStream<Path> clocks = Files.newDirectoryStream(batteryClocks)) {
      for (Path clock : clocks) {
        if (agrees(clock.resolve("since_epoch"), wall)) {
          return true;
        }
      }
      return false;
    } catch (IOException unreadable) {
      return false;
    }
  }

  private static boolean agrees(Path sinceEpoch, Instant wall) {
    try {
      Instant says = Instant.ofEpochSecond(Long.parseLong(Files.readString(sinceEpoch).strip()));
      return Duration.between(says, wall).abs().compareTo(NEAR) <= 0;
    } catch (IOException | NumberFormatException notReadable) {
      return false;
    }
  }
}
