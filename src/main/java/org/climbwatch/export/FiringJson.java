package org.climbwatch.export;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;

/**
 * Writes a firing as one JSON document: {@code firing}, {@code events}, and {@code rows} in the
 * order in which they came. To be called in that order.
 */
public final class FiringJson {
  private final JsonGenerator out;

  public FiringJson(OutputStream stream) throws IOException {
    out = new JsonFactory().createGenerator(stream, JsonEncoding.UTF8);
    out.writeStartObject();
  }

  /** The firing itself. */
  public void firing(long id, String name, Instant began, Optional<Instant> ended, boolean byItself)
      throws IOException {
    out.writeObjectFieldStart("firing");
    out.writeNumberField("id", id);
    out.writeStringField("name", name);
    out.writeStringField("began", began.toString());
    out.writeStringField("ended", ended.map(Instant::toString).orElse(null));
    out.writeBooleanField("by_itself", byItself);
    out.writeEndObject();
    out.writeArrayFieldStart("events");
  }

  /** One event as it was announced. */
  public void event(
      Instant time,
      long elapsedMs,
      String event,
      String subject,
      String state,
      String message,
      Optional<String> alarmId)
      throws IOException {
    out.writeStartObject();
    times(time, elapsedMs);
    out.writeStringField("event", event);
    out.writeStringField("subject", subject);
    out.writeStringField("state", state);
    out.writeStringField("message", message);
    if (alarmId.isPresent()) {
      out.writeStringField("alarm_id", alarmId.get());
    }
    out.writeEndObject();
  }

  /** The events are done; readings and deeds follow. */
  public void rows() throws IOException {
    out.writeEndArray();
    out.writeArrayFieldStart("rows");
  }

  /** One reading, in the units of {@link FiringCsv#reading}. */
  public void reading(
      long wallMs,
      long elapsedMs,
      String probe,
      int temperatureMilliC,
      int uncertaintyCentiC,
      int climbDeciCPerHour,
      int emfTenthUv,
      int coldJunctionMilliC,
      String quality,
      String phase,
      int samples,
      int spreadTenthUv,
      int spreadMilliC)
      throws IOException {
    out.writeStartObject();
    times(Instant.ofEpochMilli(wallMs), elapsedMs);
    out.writeStringField("probe", probe);
    number("temperature_c", temperatureMilliC, 3);
    number("uncertainty_c", uncertaintyCentiC, 2);
    number("climb_c_per_h", climbDeciCPerHour, 1);
    number("emf_mv", emfTenthUv, 4);
    number("cold_junction_c", coldJunctionMilliC, 3);
    out.writeStringField("quality", quality);
    out.writeStringField("phase", phase);
    number("samples", samples, 0);
    number("spread_mv", spreadTenthUv, 4);
    number("spread_c", spreadMilliC, 3);
    out.writeEndObject();
  }

  /** Something that the potter or the program did. */
  public void deed(
      Instant time, long elapsedMs, String phase, String action, String subject, String text)
      throws IOException {
    out.writeStartObject();
    times(time, elapsedMs);
    out.writeStringField("action", action);
    out.writeStringField("subject", subject);
    out.writeStringField("text", text);
    out.writeStringField("phase", phase);
    out.writeEndObject();
  }

  /** Ends the document and leaves the stream open. */
  public void end() throws IOException {
    out.writeEndArray();
    out.writeEndObject();
    out.writeRaw('\n');
    out.flush();
  }

  private void times(Instant time, long elapsedMs) throws IOException {
    out.writeStringField("time", time.toString());
    out.writeNumberField("elapsed_s", BigDecimal.valueOf(elapsedMs, 3));
  }

  private void number(String name, int value, int places) throws IOException {
    if (value == FiringCsv.NONE) {
      out.writeNullField(name);
    } else {
      out.writeNumberField(name, BigDecimal.valueOf(value, places));
    }
  }
}
