package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** The small JSON object of texts and numbers that a change may carry. */
final class RequestBody {
  /** Bytes; a long note fits many times over. */
  static final int MOST_BYTES = 16_384;

  private final Map<String, String> texts;
  private final Map<String, Double> numbers;

  private RequestBody(Map<String, String> texts, Map<String, Double> numbers) {
    this.texts = texts;
    this.numbers = numbers;
  }

  /**
   * Reads the body of a request; an empty one is an empty object.
   *
   * @param allowed the field names that the request knows
   * @throws Refused when it is too long, not JSON, not an object of texts, or has other fields
   */
  static RequestBody of(Context context, List<String> allowed) throws IOException {
    return of(context, allowed, List.of());
  }

  /** The same with further fields that are numbers. */
  static RequestBody of(Context context, List<String> texts, List<String> numbers)
      throws IOException {
    RequestBody body = new RequestBody(new LinkedHashMap<>(), new LinkedHashMap<>());
    byte[] bytes = bytes(context);
    if (bytes.length > 0) {
      parsed(bytes, in -> body.parse(in, texts, numbers));
    }
    return body;
  }

  /** Reads what a parser gives. */
  interface Reader<T> {
    T read(JsonParser in) throws IOException;
  }

  /**
   * Reads a body of another shape.
   *
   * @throws Refused when it is too long or not JSON, and what the reader throws
   */
  static <T> T of(Context context, Reader<T> reader) throws IOException {
    return parsed(bytes(context), reader);
  }

  private static byte[] bytes(Context context) throws IOException {
    byte[] bytes;
    try (InputStream in = context.req().getInputStream()) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    }
    if (bytes.length > MOST_BYTES) {
      throw new Refused(
          413, "Request is too long", "The body may have " + MOST_BYTES + " bytes at most.");
    }
    return bytes;
  }

  private static <T> T parsed(byte[] bytes, Reader<T> reader) throws IOException {
    try (JsonParser in = Json.factory().createParser(bytes)) {
      return reader.read(in);
    } catch (JsonProcessingException notJson) {
      throw Refused.badRequest(
          "The body is not JSON, or not in UTF-8: line "
              + notJson.getLocation().getLineNr()
              + ", column "
              + notJson.getLocation().getColumnNr()
              + ".");
    }
  }

  private RequestBody parse(JsonParser in, List<String> textNames, List<String> numberNames)
      throws IOException {
    List<String> allowed = new ArrayList<>(textNames);
    allowed.addAll(numberNames);
    if (in.nextToken() != JsonToken.START_OBJECT) {
      throw Refused.badRequest("The body must be a JSON object with " + allowed + ".");
    }
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String name = in.currentName();
      if (!allowed.contains(name)) {
        throw Refused.badRequest("Unknown field \"" + name + "\"; allowed: " + allowed + ".");
      }
      if (texts.containsKey(name) || numbers.containsKey(name)) {
        throw Refused.badRequest("Field \"" + name + "\" is there twice.");
      }
      JsonToken value = in.nextToken();
      if (numberNames.contains(name)) {
        requireKind(name, value.isNumeric(), "a number");
        numbers.put(name, in.getDoubleValue());
      } else {
        requireKind(name, value == JsonToken.VALUE_STRING, "a text in quotes");
        texts.put(name, in.getText());
      }
    }
    if (in.nextToken() != null) {
      throw Refused.badRequest("There is more after the JSON object.");
    }
    return this;
  }

  private static void requireKind(String name, boolean fits, String kind) {
    if (!fits) {
      throw Refused.badRequest("Field \"" + name + "\" must be " + kind + ".");
    }
  }

  /** A number; empty when it was left out. */
  OptionalDouble number(String name) {
    Double number = numbers.get(name);
    return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  /**
   * A text, stripped; blank when it was left out.
   *
   * @throws Refused when it is longer than {@code most} characters or has control characters or
   *     half a character
   */
  String text(String name, int most) {
    String text = texts.getOrDefault(name, "").strip();
    if (text.length() > most) {
      throw Refused.badRequest(
          "Field \"" + name + "\" may have " + most + " characters, had " + text.length() + ".");
    }
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t') {
        throw Refused.badRequest("Field \"" + name + "\" has a control character in it.");
      }
    }
    if (!StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
      throw Refused.badRequest(
          "Field \"" + name + "\" has half a character in it (a lone surrogate); send it whole.");
    }
    return text;
  }

  /** A text that must be there. */
  String needed(String name, int most) {
    String text = text(name, most);
    if (text.isEmpty()) {
      throw Refused.badRequest("Field \"" + name + "\" is missing or blank.");
    }
    return text;
  }
}
