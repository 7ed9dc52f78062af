package org.climbwatch.app.config;

/**
 * HOST:PORT as written.
 *
 * @param port 0 to 65535; 0 takes any free one
 */
public record ListenAddress(String host, int port) {
  static final String ALLOWED = "write for example 127.0.0.1:8080 (port 0 to 65535)";

  /**
   * Reads HOST:PORT; an IPv6 address stands in square brackets.
   *
   * @throws IllegalArgumentException saying what is allowed
   */
  public static ListenAddress of(String text) {
    int colon = text.lastIndexOf(':');
    String host = colon < 0 ? "" : text.substring(0, colon);
    if (host.startsWith("[") && host.endsWith("]")) {
      host = host.substring(1, host.length() - 1);
    } else if (host.contains(":")) {
      host = "";
    }
    try {
      int port = Integer.parseInt(text.substring(colon + 1));
      if (!host.isBlank() && port >= 0 && port <= 65_535) {
        return new ListenAddress(host, port);
      }
    } catch (NumberFormatException notAPort) {
      // told below
    }
    throw new IllegalArgumentException("\"" + text + "\" is no HOST:PORT; " + ALLOWED);
  }
}
