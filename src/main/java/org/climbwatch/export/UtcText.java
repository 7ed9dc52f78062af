package org.climbwatch.export;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Wall time as ISO 8601 in UTC with milliseconds; down to the minute it is made once a minute. */
final class UtcText {
  private static final int MINUTE_MS = 60_000;
  private static final DateTimeFormatter DOWN_TO_THE_MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:", Locale.ROOT).withZone(ZoneOffset.UTC);

  private long minuteMs = Long.MIN_VALUE;
  private byte[] upToMinute = new byte[0];

  /** Puts a time between the years 0 and 9999. */
  void put(ByteText text, long epochMs) {
    long into = epochMs - minuteMs;
    if (into < 0 || into >= MINUTE_MS || minuteMs == Long.MIN_VALUE) {
      into = Math.floorMod(epochMs, (long) MINUTE_MS);
      minuteMs = epochMs - into;
      upToMinute =
          DOWN_TO_THE_MINUTE
              .format(Instant.ofEpochMilli(minuteMs))
              .getBytes(StandardCharsets.US_ASCII);
    }
    int millis = (int) into;
    int second = millis / 1000;
    text.put(upToMinute);
    text.putPair(second);
    text.put('.');
    text.putTriple(millis - second * 1000);
    text.put('Z');
  }
}
