package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.OptionalDouble;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.watch.Judged;

/** Writes readings: the raw signal, and beside it what was shown. */
final class ReadingWriter implements AutoCloseable {
  private final PreparedStatement insert;
  private final Probes probes;

  ReadingWriter(Connection connection, Probes probes) throws SQLException {
    this.probes = probes;
    insert =
        connection.prepareStatement(
            """
            INSERT INTO reading (id, boot, ms, probe, kind, emf_tenth_uv, linearised_mc,
              cold_junction_mc, temperature_mc, uncertainty_cc, climb_dc_h, climb_uncertainty_dc_h,
              fault, spike, phase, samples, spread) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""");
  }

  void write(long id, Judged judged) throws SQLException {
    Reading reading = judged.reading();
    insert.setLong(1, id);
    insert.setInt(2, reading.at().boot());
    insert.setLong(3, reading.at().millis());
    insert.setInt(4, probes.id(reading.probe()));
    setRaw(reading);
    setShown(judged);
    insert.executeUpdate();
  }

  private void setRaw(Reading reading) throws SQLException {
    int kind = Codes.KIND_FAULTY;
    OptionalDouble emfMv = OptionalDouble.empty();
    OptionalDouble linearisedC = OptionalDouble.empty();
    OptionalDouble coldJunctionC = OptionalDouble.empty();
    if (reading instanceof Reading.Emf emf) {
      kind = Codes.KIND_EMF;
      emfMv = OptionalDouble.of(emf.emfMv());
      coldJunctionC = OptionalDouble.of(emf.coldJunctionC());
    } else if (reading instanceof Reading.Linearised linearised) {
      kind = Codes.KIND_LINEARISED;
      linearisedC = OptionalDouble.of(linearised.temperatureC());
      coldJunctionC = linearised.coldJunctionC();
    }
    insert.setInt(5, kind);
    setLooks(reading);
    setSteps(6, emfMv, 1e4);
    setSteps(7, linearisedC, 1e3);
    setSteps(8, coldJunctionC, 1e3);
  }

  /** Nothing for a single look, so that its row stays as small as it was. */
  private void setLooks(Reading reading) throws SQLException {
    if (reading instanceof Reading.Emf emf && emf.samples() > 1) {
      insert.setInt(16, emf.samples());
      insert.setInt(17, steps(emf.spreadMv(), 1e4));
    } else if (reading instanceof Reading.Linearised linearised && linearised.samples() > 1) {
      insert.setInt(16, linearised.samples());
      insert.setInt(17, steps(linearised.spreadC(), 1e3));
    } else {
      insert.setNull(16, Types.INTEGER);
      insert.setNull(17, Types.INTEGER);
    }
  }

  private void setShown(Judged judged) throws SQLException {
    setSteps(9, judged.temperatureC(), 1e3);
    setSteps(10, judged.uncertaintyC(), 1e2);
    Climb climb = judged.climb().orElse(null);
    setSteps(11, climb == null ? OptionalDouble.empty() : OptionalDouble.of(climb.cPerHour()), 10);
    setSteps(
        12,
        climb == null ? OptionalDouble.empty() : OptionalDouble.of(climb.uncertaintyCPerHour()),
        10);
    if (judged.fault().isPresent()) {
      insert.setInt(13, Codes.of(judged.fault().get()));
    } else {
      insert.setNull(13, Types.INTEGER);
    }
    insert.setInt(14, judged.spike() ? 1 : 0);
    insert.setInt(15, Codes.of(judged.phase()));
  }

  private void setSteps(int column, OptionalDouble value, double stepsPerUnit) throws SQLException {
    if (value.isPresent()) {
      insert.setInt(column, steps(value.getAsDouble(), stepsPerUnit));
    } else {
      insert.setNull(column, Types.INTEGER);
    }
  }

  /** Whole steps of the record's grid; what no instrument can mean ends at the ends of an int. */
  static int steps(double value, double stepsPerUnit) {
    double steps = Math.rint(value * stepsPerUnit);
    return (int) Math.max(-Integer.MAX_VALUE, Math.min(Integer.MAX_VALUE, steps));
  }

  @Override
  public void close() throws SQLException {
    insert.close();
  }
}
