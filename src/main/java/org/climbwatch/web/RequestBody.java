package org.climbwatch.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The small JSON object of texts that a change may carry. */
final class RequestBody {
  /** Bytes; a long note fits many times over. */
  static final int MOST_BYTES = 16_384;

  private final Map<String, String> texts;

  private RequestBody(Map<String, String> texts) {
    this.texts = texts;
  }

  /**
   * Reads the body of a request; an empty one is an empty object.
   *
   * @param allowed the field names that the request knows
   * @throws Refused when it is too long, not JSON, not an object of texts, or has other fields
   */
  static RequestBody of(Context context, List<String> allowed) throws IOException {
    byte[] bytes;
    try (InputStream in = context.req().getInputStream()) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    }
    if (bytes.length > MOST_BYTES) {
      throw new Refused(
          413, "Request is too long", "The body may have " + MOST_BYTES + " bytes at most.");
    }
    try {
      return new RequestBody(bytes.length == 0 ? Map.of() : parse(bytes, allowed));
    } catch (JsonProcessingException notJson) {
      throw Refused.badRequest(
          "The body is not JSON, or not in UTF-8: line "
              + notJson.getLocation().getLineNr()
              + ", column "
              + notJson.getLocation().getColumnNr()
              + ".");
    }
  }

  private static Map<String, String> parse(byte[] bytes, List<String> allowed) throws IOException {
    Map<String, String> texts = new LinkedHashMap<>();
    try (JsonParser in = Json.factory().createParser(bytes)) {
      if (in.nextToken() != JsonToken.START_OBJECT) {
        throw Refused.badRequest("The body must be a JSON object with " + allowed + ".");
      }
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String name = in.currentName();
        if (!allowed.contains(name)) {
          throw Refused.badRequest("Unknown field \"" + name + "\"; allowed: " + allowed + ".");
        }
        if (in.nextToken() != JsonToken.VALUE_STRING) {
          throw Refused.badRequest("Field \"" + name + "\" must be a text in quotes.");
        }
        if (texts.put(name, in.getText()) != null) {
          throw Refused.badRequest("Field \"" + name + "\" is there twice.");
        }
      }
      if (in.nextToken() != null) {
        throw Refused.badRequest("There is more after the JSON object.");
      }
    }
    return texts;
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
