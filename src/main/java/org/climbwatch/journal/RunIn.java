package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;

/**
 * Finds the place three hours before another.
 *
 * <p>Hours are monotonic within a boot and by the wall clocks between boots; where these contradict
 * each other the pause counts nothing, which leads farther back.
 */
final class RunIn {
  private static final long RUN_IN_MS = 3 * 3_600_000L;

  private final Connection connection;
  private long start;
  private long missingMs = RUN_IN_MS;
  private OptionalLong laterWallMs = OptionalLong.empty();

  private RunIn(Connection connection, long anchor) {
    this.connection = connection;
    this.start = anchor;
  }

  static long start(Connection connection, long anchor) throws SQLException {
    RunIn runIn = new RunIn(connection, anchor);
    List<Boots.Range> boots = Boots.between(connection, 1, anchor);
    for (int i = boots.size() - 1; i >= 0 && runIn.missingMs > 0; i--) {
      runIn.goBack(boots.get(i));
    }
    return runIn.start;
  }

  private void goBack(Boots.Range boot) throws SQLException {
    OptionalLong firstMs = Boots.firstMs(connection, boot);
    if (firstMs.isEmpty()) {
      return;
    }
    long untilMs = Boots.lastMs(connection, boot).orElseThrow();
    if (laterWallMs.isPresent()) {
      long pauseMs = laterWallMs.getAsLong() - boot.wallOffsetMs() - untilMs;
      missingMs -= Math.max(0, pauseMs);
    }
    if (missingMs > 0) {
      goBackWithin(boot, firstMs.getAsLong(), untilMs);
    }
  }

  private void goBackWithin(Boots.Range boot, long firstMs, long untilMs) throws SQLException {
    long fromMs = untilMs - missingMs;
    start =
        firstMs >= fromMs
            ? boot.first()
            : Seek.firstNotBefore(
                connection, boot.first(), Math.min(start - 1, boot.last()), fromMs);
    missingMs -= untilMs - firstMs;
    laterWallMs = OptionalLong.of(firstMs + boot.wallOffsetMs());
  }
}
