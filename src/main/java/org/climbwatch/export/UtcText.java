package org.climbwatch.export;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;

/** Wall time as ISO 8601 in UTC with milliseconds; the date is worked out once a day. */
final class UtcText {
  private static final long DAY_MS = 86_400_000;

  private long day = Long.MIN_VALUE;
  private int year;
  private int month;
  private int dayOfMonth;

  void put(ByteText text, long epochMs) {
    long wanted = Math.floorDiv(epochMs, DAY_MS);
    if (wanted != day) {
      ZonedDateTime date = Instant.ofEpochMilli(epochMs).atZone(ZoneOffset.UTC);
      year = date.getYear();
      month = date.getMonthValue();
      dayOfMonth = date.getDayOfMonth();
      day = wanted;
    }
    int ms = (int) Math.floorMod(epochMs, DAY_MS);
    text.digits(year, 4);
    text.put('-');
    text.digits(month, 2);
    text.put('-');
    text.digits(dayOfMonth, 2);
    text.put('T');
    text.digits(ms / 3_600_000, 2);
    text.put(':');
    text.digits(ms / 60_000 % 60, 2);
    text.put(':');
    text.digits(ms / 1000 % 60, 2);
    text.put('.');
    text.digits(ms % 1000, 3);
    text.put('Z');
  }
}
