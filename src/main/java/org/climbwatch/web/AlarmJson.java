package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.View;

/** The alarms of the status document. */
final class AlarmJson {
  private AlarmJson() {}

  /**
   * @param followed the name of the probe that the firing goes by
   */
  static void standing(
      JsonGenerator out,
      View.StandingAlarm alarm,
      String followed,
      Function<Moment, Instant> wallTime)
      throws IOException {
    out.writeStartObject();
    out.writeStringField("id", alarm.id());
    head(out, alarm.kind(), alarm.probe(), alarm.state());
    out.writeStringField("priority", alarm.kind().priority(alarm.probe().equals(followed)).word());
    out.writeBooleanField("first_out", alarm.cameFirst());
    out.writeStringField("since", Json.time(wallTime.apply(alarm.since())));
    if (alarm.shelvedUntil().isPresent()) {
      out.writeStringField("shelved_until", Json.time(wallTime.apply(alarm.shelvedUntil().get())));
    } else {
      out.writeNullField("shelved_until");
    }
    out.writeStringField("who", alarm.by().who());
    out.writeStringField("note", alarm.by().note());
    out.writeStringField("message", alarm.message());
    out.writeStringField("seen", Json.time(wallTime.apply(alarm.seenAt())));
    out.writeEndObject();
  }

  /** What does not look now, and why: its phase, or the settings. */
  static void unwatched(JsonGenerator out, List<View.WatchedAlarm> watched) throws IOException {
    out.writeArrayFieldStart("unwatched");
    for (View.WatchedAlarm alarm : watched) {
      if (alarm.state() == AlarmState.SUPPRESSED_BY_DESIGN
          || alarm.state() == AlarmState.OUT_OF_SERVICE) {
        out.writeStartObject();
        head(out, alarm.kind(), alarm.probe(), alarm.state());
        out.writeEndObject();
      }
    }
    out.writeEndArray();
  }

  private static void head(JsonGenerator out, AlarmKind kind, String probe, AlarmState state)
      throws IOException {
    out.writeStringField("probe", probe);
    out.writeStringField("kind", kind.word());
    out.writeStringField("title", kind.title());
    out.writeStringField("state", state.word());
  }
}
