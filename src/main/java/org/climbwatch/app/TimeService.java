package org.climbwatch.app;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;

/**
 * Who keeps the machine's clock right, as far as files tell it.
 *
 * <p>systemd-timesyncd makes a folder when it starts and a file in it once it has set the clock
 * (systemd-timesyncd.service(8)). Other services leave no such mark: of them nothing is known.
 */
final class TimeService {
  private static final long NEAR_S = 120;

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
    } catch (IOException | DirectoryIteratorException unreadable) {
      return false;
    }
  }

  private static boolean agrees(Path sinceEpoch, Instant wall) {
    try {
      long says = Long.parseLong(Files.readString(sinceEpoch).strip());
      return Math.abs(wall.getEpochSecond() - says) <= NEAR_S;
    } catch (IOException | NumberFormatException notReadable) {
      return false;
    }
  }
}
