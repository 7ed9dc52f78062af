package org.climbwatch.web;

import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

/** What every answer tells the browser to refuse. */
final class SecurityHeaders {
  private static final List<Map.Entry<String, String>> HEADERS =
      List.of(
          Map.entry(
              "Content-Security-Policy",
              "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none';"
                  + " frame-ancestors 'none'"),
          Map.entry("X-Content-Type-Options", "nosniff"),
          Map.entry("Referrer-Policy", "no-referrer"),
          Map.entry("X-Frame-Options", "DENY"),
          Map.entry("Cross-Origin-Resource-Policy", "same-origin"),
          Map.entry("Cross-Origin-Opener-Policy", "same-origin"));

  private SecurityHeaders() {}

  static void forEach(BiConsumer<String, String> set) {
    HEADERS.forEach(header -> set.accept(header.getKey(), header.getValue()));
  }
}
