package org.climbwatch.app;

import java.util.Map;
import java.util.TreeMap;
import org.climbwatch.journal.Journal;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.reading.Moment;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Each boot's offset to wall time; that of this boot is written anew when the clock was set. */
final class WallClock {
  private static final Logger LOG = LoggerFactory.getLogger(WallClock.class);

  /** Wall ms that the clock may wander before its boot's offset is written again. */
  private static final long MOVED_MS = 500;

  private static final long TRY_AGAIN_MS = 5000;

  private final KilnTime time;
  private final Journal journal;
  private final int boot;
  private final Map<Integer, Long> offsets = new TreeMap<>();
  private long notBeforeRealMillis = Long.MIN_VALUE;

  WallClock(KilnTime time, Journal journal, int boot) {
    this.time = time;
    this.journal = journal;
    this.boot = boot;
  }

  /** Milliseconds since 1970 of a moment. */
  long millis(Moment moment) {
    long offset =
        moment.boot() == boot
            ? time.wallOffsetMillis()
            : offsets.computeIfAbsent(moment.boot(), journal::wallOffsetMs);
    return moment.millis() + offset;
  }

  /** Writes this boot's offset when it has moved; tries again later when it cannot. */
  void follow(long realMillis) {
    long offset = time.wallOffsetMillis();
    Long known = offsets.putIfAbsent(boot, offset);
    if (known == null
        || Math.abs(offset - known) <= MOVED_MS
        || realMillis < notBeforeRealMillis
        || !journal.failing().isEmpty()) {
      return;
    }
    try {
      journal.clockSet(boot, offset);
      offsets.put(boot, offset);
      LOG.info("the clock was set by {} s", (offset - known) / 1000.0);
    } catch (JournalTrouble trouble) {
      notBeforeRealMillis = realMillis + TRY_AGAIN_MS;
      LOG.warn("{}", trouble.getMessage());
    }
  }
}
