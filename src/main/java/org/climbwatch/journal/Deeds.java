package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/** The table of what the potter and the program did. */
final class Deeds {
  /**
   * One row.
   *
   * @param subject the firing's name, the phase's word, the alarm's id or the reported matter; else
   *     empty
   * @param text the note, who answered with their note below, for how long it was shelved and by
   *     whom, how long the machine was off, what was reported, or the encoded settings; else empty
   */
  record Row(long id, Moment at, String action, String subject, String text) {
    Row {
      Objects.requireNonNull(subject, "subject");
      Objects.requireNonNull(text, "text");
    }

    Row withId(long id) {
      return new Row(id, at, action, subject, text);
    }

    /** The same; of a start of the program with whether the machine had stayed on. */
    Row toldOfRestart(List<Boots.Range> boots) {
      boolean stayedOn =
          action.equals("resumed")
              && boots.stream().anyMatch(one -> one.boot() == at.boot() && one.first() < id);
      return stayedOn ? new Row(id, at, action, subject, RecordedDeed.SAME_BOOT) : this;
    }

    RecordedDeed recorded(Timeline timeline) {
      return recorded(timeline, timeline.elapsedMs(at.boot(), at.millis()));
    }

    RecordedDeed recorded(Timeline timeline, long elapsedMs) {
      long wallMs = timeline.wallMs(at.boot(), at.millis());
      return new RecordedDeed(Instant.ofEpochMilli(wallMs), elapsedMs, action, subject, text);
    }
  }

  private static final String COLUMNS = "SELECT id, boot, ms, action, subject, text FROM deed ";

  private Deeds() {}

  static void insert(Connection connection, Row row) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO deed (id, boot, ms, action, subject, text) VALUES (?, ?, ?, ?, ?, ?)")) {
      insert.setLong(1, row.id());
      insert.setInt(2, row.at().boot());
      insert.setLong(3, row.at().millis());
      insert.setString(4, row.action());
      insert.setString(5, row.subject());
      insert.setString(6, row.text());
      insert.executeUpdate();
    }
  }

  /** All of a range of inputs, in order. */
  static List<Row> between(Connection connection, long first, long last) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(COLUMNS + "WHERE id BETWEEN ? AND ? ORDER BY id")) {
      query.setLong(1, first);
      query.setLong(2, last);
      return rows(query);
    }
  }

  /** The settings in force just before an input. */
  static Optional<Row> configuredBefore(Connection connection, long id) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            COLUMNS + "WHERE id < ? AND action = 'configured' ORDER BY id DESC LIMIT 1")) {
      query.setLong(1, id);
      return rows(query).stream().findFirst();
    }
  }

  private static List<Row> rows(PreparedStatement query) throws SQLException {
    List<Row> rows = new ArrayList<>();
    try (ResultSet row = query.executeQuery()) {
      while (row.next()) {
        Moment at = new Moment(row.getInt(2), row.getLong(3));
        rows.add(new Row(row.getLong(1), at, row.getString(4), row.getString(5), row.getString(6)));
      }
    }
    return rows;
  }

  /** What is to be written of an input that is no reading; its place is not known yet. */
  static Row row(Input input, SettingsCodec codec) {
    if (input instanceof Input.Began began) {
      return row(began, "began", began.name(), "");
    } else if (input instanceof Input.Ended) {
      return row(input, "ended", "", "");
    } else if (input instanceof Input.Declared declared) {
      return row(input, "declared", declared.phase().word(), "");
    } else if (input instanceof Input.Noted noted) {
      return row(input, "noted", "", noted.text());
    } else if (input instanceof Input.Resumed resumed) {
      return row(input, "resumed", "", away(resumed.away()));
    } else if (input instanceof Input.Configured configured) {
      return row(input, "configured", "", codec.encode(configured.settings()));
    } else if (input instanceof Input.Reported reported) {
      return row(input, "reported", reported.report().matter(), reported.report().text());
    }
    return alarmRow(input);
  }

  private static Row alarmRow(Input input) {
    if (input instanceof Input.Acknowledged answer) {
      return row(input, "acknowledged", answer.alarmId(), answer.by().text());
    } else if (input instanceof Input.Shelved shelved) {
      return row(input, "shelved", shelved.alarmId(), shelved.shelving().text());
    } else if (input instanceof Input.Unshelved unshelved) {
      return row(input, "unshelved", unshelved.alarmId(), unshelved.by().text());
    } else if (input instanceof Input.Reset reset) {
      return row(input, "reset", reset.alarmId(), reset.by().text());
    }
    throw new IllegalArgumentException("a reading is appended or announced, not recorded");
  }

  private static Row row(Input input, String action, String subject, String text) {
    return new Row(0, input.at(), action, subject, text);
  }

  static Input input(Row row, SettingsCodec codec) {
    return switch (row.action()) {
      case "began" -> new Input.Began(row.at(), row.subject());
      case "ended" -> new Input.Ended(row.at());
      case "declared" -> new Input.Declared(row.at(), Phase.ofWord(row.subject()));
      case "noted" -> new Input.Noted(row.at(), row.text());
      case "acknowledged" ->
          new Input.Acknowledged(row.at(), row.subject(), Signature.ofText(row.text()));
      case "shelved" -> new Input.Shelved(row.at(), row.subject(), Shelving.ofText(row.text()));
      case "unshelved" ->
          new Input.Unshelved(row.at(), row.subject(), Signature.ofText(row.text()));
      case "reset" -> new Input.Reset(row.at(), row.subject(), Signature.ofText(row.text()));
      case "resumed" -> new Input.Resumed(row.at(), away(row.text()));
      case "reported" -> new Input.Reported(row.at(), Report.of(row.subject(), row.text()));
      case "configured" -> new Input.Configured(row.at(), codec.decode(row.text()));
      default -> throw new IllegalStateException("unknown action \"" + row.action() + "\"");
    };
  }

  /** {@code 95 s}; empty for none, and in older files. */
  private static String away(Duration away) {
    return away.isZero() ? "" : away.toSeconds() + " s";
  }

  private static Duration away(String text) {
    return text.isEmpty()
        ? Duration.ZERO
        : Duration.ofSeconds(Long.parseLong(text.substring(0, text.indexOf(' '))));
  }
}
