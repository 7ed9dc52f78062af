package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * JSON written field by field with Jackson's streaming core. Its data binding is left alone: it
 * would cost the Pi 80 ms and 6 MB at the start.
 */
final class Json {
  static final String TYPE = "application/json";

  private static final JsonFactory FACTORY = new JsonFactory();
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

  /** Writes one document. */
  interface Writer {
    void write(JsonGenerator out) throws IOException;
  }

  private Json() {}

  /** A document as UTF-8. */
  static byte[] bytes(Writer writer) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
    try (JsonGenerator out = FACTORY.createGenerator(bytes)) {
      writer.write(out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return bytes.toByteArray();
  }

  static JsonFactory factory() {
    return FACTORY;
  }

  /** ISO 8601, UTC, ms. */
  static String time(Instant instant) {
    return TIME.format(instant);
  }

  /** A number rounded to some decimals, or null. */
  static void number(JsonGenerator out, String name, OptionalDouble value, int decimals)
      throws IOException {
    if (value.isEmpty()) {
      out.writeNullField(name);
    } else {
      out.writeFieldName(name);
      number(out, value.getAsDouble(), decimals);
    }
  }

  /** A bare number rounded to some decimals; null for NaN and the infinities. */
  static void number(JsonGenerator out, double value, int decimals) throws IOException {
    if (!Double.isFinite(value)) {
      out.writeNull();
      return;
    }
    double scale = Math.pow(10, decimals);
    double rounded = Math.rint(value * scale) / scale;
    if (rounded == Math.rint(rounded) && Math.abs(rounded) < 1e15) {
      out.writeNumber((long) rounded);
    } else {
      out.writeNumber(rounded);
    }
  }

  /** A whole number or null. */
  static void number(JsonGenerator out, String name, OptionalLong value) throws IOException {
    if (value.isEmpty()) {
      out.writeNullField(name);
    } else {
      out.writeNumberField(name, value.getAsLong());
    }
  }
}
