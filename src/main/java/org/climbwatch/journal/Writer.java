package org.climbwatch.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.OptionalLong;
import org.climbwatch.watch.Event;

/**
 * Puts inputs and events into the tables: all of a batch in one transaction, or nothing.
 *
 * <p>What it keeps in memory (the next place, the open firing and its minute, standing alarms)
 * follows from the file. After a failure it is taken from there again, so that the same batch can
 * be tried later.
 */
final class Writer implements AutoCloseable {
  private final Connection connection;

  private boolean loaded;
  private Probes probes;
  private ReadingWriter readings;
  private Events events;
  private FiringLog firings;
  private long nextSeq;

  private Writer(Connection connection) throws SQLException {
    this.connection = connection;
    load();
  }

  /** Opens a journal's file, which is then up to date; refuses what is no journal of ours. */
  static Writer open(Path file, List<String> steps) throws SQLException {
    Sqlite.refuseForeign(file, steps.size());
    Connection connection = Sqlite.writer(file);
    try {
      Schema.migrate(connection, file, steps);
      WriteAheadLog.prepare(connection);
      return new Writer(connection);
    } catch (SQLException | RuntimeException failed) {
      connection.close();
      throw failed;
    }
  }

  private void load() throws SQLException {
    if (readings != null) {
      readings.close();
    }
    probes = new Probes(connection);
    readings = new ReadingWriter(connection, probes);
    events = Events.load(connection);
    firings = FiringLog.load(connection, probes);
    nextSeq = One.lastSeq(connection) + 1;
    loaded = true;
  }

  /** Work inside a transaction. */
  interface Work {
    void run() throws SQLException;
  }

  /** Writes a batch; durable on return. */
  void write(Collection<Entry> entries) throws SQLException {
    inTransaction(
        () -> {
          for (Entry entry : entries) {
            write(entry);
          }
        });
  }

  /** Does some work in a transaction of its own; durable on return. */
  void inTransaction(Work work) throws SQLException {
    One.change(connection, "BEGIN IMMEDIATE");
    try {
      if (!loaded) {
        load();
      }
      loaded = false;
      work.run();
      One.change(connection, "COMMIT");
      loaded = true;
    } catch (SQLException | RuntimeException failed) {
      Sqlite.rollback(connection);
      throw failed;
    }
  }

  private void write(Entry entry) throws SQLException {
    long seq = nextSeq++;
    if (entry instanceof Entry.Look look) {
      readings.write(seq, look.judged());
      firings.take(seq, probes.id(look.judged().reading().probe()), look);
    } else if (entry instanceof Entry.Deed deed) {
      Deeds.insert(connection, deed.row().withId(seq));
    }
    for (Event event : entry.events()) {
      events.write(seq, event);
      if (event instanceof Event.FiringBegan began) {
        firings.began(seq, began);
      } else if (event instanceof Event.FiringEnded) {
        firings.ended(seq);
      }
    }
  }

  long nextSeq() {
    return nextSeq;
  }

  OptionalLong openFiring() {
    return firings.open();
  }

  Connection connection() {
    return connection;
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
