package org.climbwatch.web;

/**
 * What went wrong, as an RFC 9457 problem document.
 *
 * @param status HTTP status
 * @param title a few words, the same for every occurrence
 * @param detail about this occurrence
 * @param instance the path that was asked for; left out of the document when empty
 */
record Problem(int status, String title, String detail, String instance) {
  static final String TYPE = "application/problem+json";

  /**
   * The document as UTF-8. Its type is the status alone, so {@code about:blank} (section 4.2.1).
   */
  byte[] bytes() {
    return Json.bytes(
        out -> {
          out.writeStartObject();
          out.writeStringField("type", "about:blank");
          out.writeStringField("title", title);
          out.writeNumberField("status", status);
          out.writeStringField("detail", detail);
          if (!instance.isEmpty()) {
            out.writeStringField("instance", instance);
          }
          out.writeEndObject();
        });
  }
}
