package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Event;

/** Keeps the rows of firings and of their minutes while inputs come in. */
final class FiringLog {
  private final Connection connection;
  private final Probes probes;
  private long open;
  private Rollups rollups = new Rollups(this::store);

  private FiringLog(Connection connection, Probes probes) {
    this.connection = connection;
    this.probes = probes;
  }

  /** As the file has it, with the minute under way taken up again from the readings. */
  static FiringLog load(Connection connection, Probes probes) throws SQLException {
    FiringLog log = new FiringLog(connection, probes);
    log.open =
        One.number(connection, "SELECT max(id) FROM firing WHERE last_seq IS NULL").orElse(0);
    if (log.open != 0) {
      log.take(log.resume(), Long.MAX_VALUE);
    }
    return log;
  }

  /** Goes on behind the stored minutes; answers the first place that may hold more. */
  private long resume() throws SQLException {
    long first =
        One.number(connection, "SELECT first_seq FROM firing WHERE id = ?", open).orElseThrow();
    List<Rollup.Block> lasts = Minutes.last(connection, open);
    lasts.forEach(rollups::resumeAfter);
    long known = One.number(connection, "SELECT count(*) FROM probe").orElse(0);
    // where another probe has no finished minute, its readings may lie anywhere
    return lasts.size() < known
        ? first
        : lasts.stream().mapToLong(Rollup.Block::lastSeq).min().orElseThrow() + 1;
  }

  /** The firing that is on. */
  OptionalLong open() {
    return open == 0 ? OptionalLong.empty() : OptionalLong.of(open);
  }

  /** Takes readings that are in the table already into the open firing. */
  void take(long first, long last) throws SQLException {
    if (open != 0) {
      TemperatureRows.read(connection, first, last, rollups);
    }
  }

  /** Takes a reading that has just been written. */
  void take(long seq, int probe, Entry.Look look) throws SQLException {
    if (open == 0) {
      return;
    }
    Moment at = look.judged().reading().at();
    if (look.judged().temperatureC().isPresent()) {
      int milliC = ReadingWriter.steps(look.judged().temperatureC().getAsDouble(), 1e3);
      rollups.good(seq, at.boot(), at.millis(), probe, milliC, look.judged().spike());
    } else {
      rollups.fault(seq, probe);
    }
  }

  void began(long seq, Event.FiringBegan event) throws SQLException {
    long first = datedBack(seq, event);
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO firing (name, by_itself, first_seq, probe) VALUES (?, ?, ?, ?)")) {
      insert.setString(1, event.name());
      insert.setInt(2, event.byItself() ? 1 : 0);
      insert.setLong(3, first);
      insert.setInt(4, probes.id(event.probe()));
      insert.executeUpdate();
    }
    open = One.number(connection, "SELECT max(id) FROM firing").orElseThrow();
    // now that the warming is known to be the start of a firing, its readings are no longer idle
    One.change(
        connection,
        "UPDATE reading SET phase = ? WHERE id BETWEEN ? AND ? AND phase = ?",
        Codes.of(Phase.DRYING),
        first,
        seq - 1,
        Codes.of(Phase.IDLE));
    rollups = new Rollups(this::store);
    take(first, seq);
  }

  void ended(long seq) throws SQLException {
    if (open == 0) {
      return;
    }
    rollups.finish();
    One.change(
        connection,
        """
        UPDATE firing SET last_seq = ?1,
          peak_mc = (SELECT max(max_mc) FROM minute
            WHERE firing = ?2 AND probe = firing.probe) WHERE id = ?2""",
        seq,
        open);
    Wear.keep(connection, open);
    open = 0;
  }

  private long datedBack(long seq, Event.FiringBegan event) throws SQLException {
    long behindLast = One.number(connection, "SELECT max(last_seq) FROM firing").orElse(0) + 1;
    if (event.since().equals(event.at())) {
      return Math.max(seq, behindLast);
    }
    long bootFirst =
        One.number(connection, "SELECT first_seq FROM boot WHERE ordinal = ?", event.since().boot())
            .orElse(1);
    long bootLast =
        One.number(
                    connection,
                    "SELECT min(first_seq) FROM boot WHERE ordinal > ?",
                    event.since().boot())
                .orElse(seq + 1)
            - 1;
    long from = Math.max(bootFirst, behindLast);
    return Math.min(seq, Seek.firstNotBefore(connection, from, bootLast, event.since().millis()));
  }

  private void store(Rollup.Block block) throws SQLException {
    Minutes.insert(connection, open, block);
  }
}
