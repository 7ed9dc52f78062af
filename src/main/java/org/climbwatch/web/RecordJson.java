package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import org.climbwatch.alarm.AlarmKind;

/** Firings, curves, histories and live items as JSON. */
final class RecordJson {
  private RecordJson() {}

  static void firings(JsonGenerator out, List<FiringSummary> firings) throws IOException {
    out.writeStartObject();
    out.writeArrayFieldStart("firings");
    for (FiringSummary firing : firings) {
      firing(out, firing);
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  static void firing(JsonGenerator out, FiringSummary firing) throws IOException {
    out.writeStartObject();
    out.writeNumberField("id", firing.id());
    out.writeStringField("name", firing.name());
    out.writeStringField("began", Json.time(firing.began()));
    if (firing.ended().isPresent()) {
      out.writeStringField("ended", Json.time(firing.ended().get()));
    } else {
      out.writeNullField("ended");
    }
    out.writeBooleanField("by_itself", firing.byItself());
    Json.number(out, "peak_c", firing.peakC(), 1);
    out.writeNumberField("alarms", firing.alarms());
    out.writeEndObject();
  }

  /** The followed probe's columns stand at the top, those of the others in {@code others}. */
  static void curves(JsonGenerator out, long id, CorrectedBy by, List<CurveColumns> curves)
      throws IOException {
    out.writeStartObject();
    out.writeNumberField("firing", id);
    out.writeStringField("calibration", by.word());
    curve(out, curves.get(0));
    out.writeArrayFieldStart("others");
    for (CurveColumns other : curves.subList(1, curves.size())) {
      out.writeStartObject();
      curve(out, other);
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private static void curve(JsonGenerator out, CurveColumns curve) throws IOException {
    out.writeStringField("probe", curve.probe());
    out.writeArrayFieldStart("elapsed_s");
    for (long elapsedMs : curve.elapsedMs()) {
      Json.number(out, elapsedMs / 1000.0, 3);
    }
    out.writeEndArray();
    out.writeArrayFieldStart("temperature_c");
    for (double temperatureC : curve.temperatureC()) {
      Json.number(out, temperatureC, 2);
    }
    out.writeEndArray();
  }

  static void events(JsonGenerator out, long id, List<EventLine> lines) throws IOException {
    out.writeStartObject();
    out.writeNumberField("firing", id);
    out.writeArrayFieldStart("events");
    for (EventLine line : lines) {
      out.writeStartObject();
      eventFields(out, line);
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  static void live(JsonGenerator out, Live item) throws IOException {
    out.writeStartObject();
    if (item instanceof Live.NewReading reading) {
      out.writeStringField("time", Json.time(reading.time()));
      Json.number(out, "firing", reading.firingId());
      Json.number(out, "elapsed_s", reading.elapsedS(), 3);
      out.writeStringField("phase", reading.judged().phase().word());
      out.writeStringField("name", reading.judged().reading().probe());
      StatusJson.measured(out, reading.judged());
    } else if (item instanceof Live.Happened happened) {
      Json.number(out, "firing", happened.firingId());
      eventFields(out, happened.line());
    }
    out.writeEndObject();
  }

  private static void eventFields(JsonGenerator out, EventLine line) throws IOException {
    out.writeStringField("time", Json.time(line.time()));
    Json.number(out, "elapsed_s", line.elapsedS(), 3);
    out.writeStringField("kind", line.kind());
    out.writeStringField("subject", line.subject());
    if (line.kind().equals(EventLine.ALARM) || line.kind().equals(EventLine.REMINDER)) {
      out.writeStringField("title", AlarmKind.ofWord(line.subject()).title());
    }
    out.writeStringField("state", line.state());
    out.writeStringField("text", line.text());
  }
}
