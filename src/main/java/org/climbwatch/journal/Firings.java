package org.climbwatch.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.ToLongFunction;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/**
 * The reading side of the journal: a connection of its own that only reads, also beside a running
 * daemon and from another process.
 *
 * <p>One thread at a time; opening one for each request costs a few milliseconds. Each method sees
 * the journal as it is at one moment. Readings that wait in the writer's memory are not seen yet.
 */
public final class Firings implements AutoCloseable {
  private final Path file;
  private final Connection connection;

  private Firings(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /**
   * Opens a journal for reading.
   *
   * @throws JournalTrouble when there is none, or it is not one that this program can read
   */
  public static Firings open(Path file) {
    if (!Files.exists(file)) {
      throw new JournalTrouble(
          "there is no journal " + file + "; name the --data folder that the daemon writes to");
    }
    try {
      Connection connection = Sqlite.reader(file);
      try {
        refuseOld(Schema.version(connection, file, Schema.STEPS.size()), file);
      } catch (SQLException | RuntimeException refused) {
        connection.close();
        throw refused;
      }
      return new Firings(file, connection);
    } catch (SQLException cause) {
      throw JournalTrouble.of("open", file, cause);
    }
  }

  private static void refuseOld(int version, Path file) {
    if (version < Schema.STEPS.size()) {
      throw new JournalTrouble(
          String.format(
              "the journal %s has version %d, this program reads version %d; start the daemon"
                  + " once, it brings the file up to date",
              file, version, Schema.STEPS.size()));
    }
  }

  /** All firings, the newest first. */
  public List<FiringSummary> list() {
    return read(
        () -> {
          List<FiringSummary> summaries = new ArrayList<>();
          for (FiringRange firing : FiringRange.all(connection)) {
            summaries.add(Summaries.of(connection, firing));
          }
          return summaries;
        });
  }

  /** One firing; empty when there is none of that id. */
  public Optional<FiringSummary> one(long id) {
    return read(
        () -> {
          Optional<FiringRange> firing = FiringRange.one(connection, id);
          return firing.isEmpty()
              ? Optional.empty()
              : Optional.of(Summaries.of(connection, firing.get()));
        });
  }

  /** The id of the newest firing. */
  public OptionalLong latest() {
    return read(() -> One.number(connection, "SELECT max(id) FROM firing"));
  }

  /**
   * What was announced during a firing, in its order.
   *
   * @throws IllegalArgumentException when there is no such firing, as in all methods below
   */
  public List<RecordedEvent> events(long id) {
    return read(() -> EventRows.of(connection, range(id)));
  }

  /** What the potter and the program did during a firing, then the remarks made after it. */
  public List<RecordedDeed> deeds(long id) {
    return read(
        () -> {
          FiringRange firing = range(id);
          Timeline timeline = Boots.timeline(connection, firing.first(), firing.last());
          List<RecordedDeed> deeds = new ArrayList<>();
          List<Boots.Range> boots = Boots.between(connection, firing.first(), firing.last());
          for (Deeds.Row row : Deeds.between(connection, firing.first(), firing.last())) {
            deeds.add(row.toldOfRestart(boots).recorded(timeline));
          }
          deeds.addAll(Remarks.of(connection, firing.id(), timeline));
          return deeds;
        });
  }

  /**
   * The curve of the probe that the firing followed, with at most so many points, keeping every
   * peak and showing every gap.
   *
   * @param points 8 to 20 000
   */
  public Curve curve(long id, int points) {
    return read(
        () -> {
          FiringRange firing = range(id);
          return curve(firing, firing.probe(), points);
        });
  }

  /** The same of each probe that measured, the followed one first. */
  public List<ProbeCurve> curves(long id, int points) {
    return read(
        () -> {
          FiringRange firing = range(id);
          Probes probes = new Probes(connection);
          List<ProbeCurve> curves = new ArrayList<>();
          for (int probe : FiringCurve.probes(connection, firing)) {
            curves.add(new ProbeCurve(probes.name(probe), curve(firing, probe, points)));
          }
          return curves;
        });
  }

  /**
   * What all firings so far, the one that is on among them, have done to a probe.
   *
   * @param probe its name; nothing is known of one that never measured
   * @param sinceWallMs ms since 1970; firings that began before are not counted
   */
  public ProbeWear wear(String probe, long sinceWallMs) {
    return read(() -> Wear.of(connection, probe, sinceWallMs));
  }

  /**
   * How a probe has come to stand beside the followed one over the firings.
   *
   * @param sinceWallMs ms since 1970; firings that began before are not looked at
   * @return empty until there are enough firings to tell
   */
  public Optional<ProbeDrift> drift(String probe, long sinceWallMs) {
    return read(() -> Companions.drift(connection, probe, sinceWallMs));
  }

  private Curve curve(FiringRange firing, int probe, int points) throws SQLException {
    return CurveReduction.reduce(new FiringCurve(connection, firing, probe).full(), points);
  }

  /**
   * Hands out all rows of a firing in their order: readings, deeds, and at the end the remarks.
   *
   * @throws IOException when the sink throws it
   */
  public void rows(long id, RowSink sink) throws IOException {
    Snapshot<IOException> stream = () -> new FiringRows(connection, range(id), sink).stream();
    atOneMoment(stream);
  }

  /**
   * Hands out what a firing followed from, as it came: the settings in force, three hours before it
   * for the core to find its state, and all its inputs.
   *
   * @param codec reads the settings
   */
  public void inputs(long id, SettingsCodec codec, Consumer<Input> into) {
    read(
        () -> {
          FiringRange firing = range(id);
          long first = RunIn.start(connection, firing.first());
          new Replay(connection, codec).between(first, firing.last(), into);
          return id;
        });
  }

  /**
   * Tells how far into a firing a moment is.
   *
   * @return for a moment of the firing, ms since its first reading; negative ones are not of it
   */
  public ToLongFunction<Moment> elapsedMs(long id) {
    return read(
        () -> {
          FiringRange firing = range(id);
          Timeline timeline = Boots.timeline(connection, firing.first(), firing.last());
          return (Moment at) -> timeline.sinceFirstMs(at.boot(), at.millis());
        });
  }

  /** All calibrations of all probes, in the order in which they were recorded. */
  public List<Calibration> calibrations() {
    return read(() -> Calibrations.all(connection));
  }

  private FiringRange range(long id) throws SQLException {
    return FiringRange.one(connection, id)
        .orElseThrow(() -> new IllegalArgumentException("there is no firing " + id));
  }

  private interface Query<T> {
    T answer() throws SQLException;
  }

  private <T> T read(Query<T> query) {
    List<T> answer = new ArrayList<>(1);
    Snapshot<RuntimeException> ask = () -> answer.add(query.answer());
    atOneMoment(ask);
    return answer.get(0);
  }

  private interface Snapshot<X extends Exception> {
    void take() throws SQLException, X;
  }

  /** A read transaction: what the daemon writes meanwhile is not seen. */
  private <X extends Exception> void atOneMoment(Snapshot<X> snapshot) throws X {
    try {
      One.change(connection, "BEGIN");
      try {
        snapshot.take();
      } finally {
        Sqlite.rollback(connection);
      }
    } catch (SQLException cause) {
      throw JournalTrouble.of("read", file, cause);
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException cause) {
      throw JournalTrouble.of("close", file, cause);
    }
  }
}
