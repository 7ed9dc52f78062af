package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What other sites, other names and guessers cannot do. */
class GuardTest {
  @ParameterizedTest(name = "Host {0}")
  @ValueSource(
      strings = {
        "127.0.0.1",
        "localhost:8080",
        "LOCALHOST",
        "192.168.4.20:80",
        "[::1]:8080",
        "kilnshed.local",
        "KilnShed.local:8080",
        "kilnshed.local."
      })
  void answersUnderItsOwnNames(String host) throws Exception {
    assertThat(ask(host)).startsWith("HTTP/1.1 200");
  }

  @ParameterizedTest(name = "Host {0}")
  @ValueSource(
      strings = {
        "rebound.example",
        "127.0.0.1.rebound.example",
        "localhost.rebound.example",
        "kilnshed.local.rebound.example",
        "1.2.3.4.5",
        "300.1.1.1",
        "notkilnshed.local",
        "[evil]"
      })
  void answersUnderNoOtherName(String host) throws Exception {
    assertThat(ask(host)).containsPattern("^HTTP/1.1 4(21|00)").contains("problem+json");
  }

  private static String ask(String host) throws Exception {
    try (Served served = new Served()) {
      return served.raw(
          "GET /api/v1/status HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
    }
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "Origin, http://other.example",
    "Origin, null",
    "Origin, http://127.0.0.1:1",
    "Origin, http://127.0.0.1",
    "Sec-Fetch-Site, cross-site",
    "Sec-Fetch-Site, same-site",
  })
  void changeFromAnotherSiteIsRefused(String header, String value) throws Exception {
    try (Served served = new Served()) {
      HttpResponse<String> response =
          served.send(served.change("/api/v1/firings", "{}").header(header, value));

      assertThat(response.statusCode()).isEqualTo(403);
      assertThat(response.body()).contains("another site");
      assertThat(served.backend.firings()).isEmpty();
    }
  }

  @Test
  void changeFromOurOwnPageIsDone() throws Exception {
    try (Served served = new Served()) {
      HttpResponse<String> response =
          served.send(
              served
                  .change("/api/v1/firings", "{}")
                  .header("Origin", "http://127.0.0.1:" + served.port)
                  .header("Sec-Fetch-Site", "same-origin"));

      assertThat(response.statusCode()).isEqualTo(201);
    }
  }

  /** A form of another site can send these three types, or none, without asking first. */
  @ParameterizedTest(name = "Content-Type {0}")
  @ValueSource(
      strings = {
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "",
        "text/plain; application/json",
        "application/jsonp"
      })
  void changeOfAnotherContentTypeIsRefused(String type) throws Exception {
    try (Served served = new Served()) {
      HttpRequest.Builder request =
          served.to("/api/v1/firings").POST(HttpRequest.BodyPublishers.ofString("{}"));
      if (!type.isEmpty()) {
        request.header("Content-Type", type);
      }

      HttpResponse<String> response = served.send(request);

      assertThat(response.statusCode()).isEqualTo(415);
      assertThat(served.backend.firings()).isEmpty();
    }
  }

  @Test
  void preflightIsNeverGranted() throws Exception {
    try (Served served = new Served()) {
      HttpResponse<String> response =
          served.send(
              served
                  .to("/api/v1/firings")
                  .method("OPTIONS", HttpRequest.BodyPublishers.noBody())
                  .header("Origin", "http://other.example")
                  .header("Access-Control-Request-Method", "POST"));

      assertThat(response.statusCode()).isEqualTo(403);
      assertThat(response.headers().map().keySet())
          .noneMatch(name -> name.toLowerCase(java.util.Locale.ROOT).startsWith("access-control"));
    }
  }

  @Test
  void methodCannotBeSmuggledInAHeader() throws Exception {
    try (Served served = new Served()) {
      HttpResponse<String> response =
          served.send(served.to("/api/v1/firings").header("X-HTTP-Method-Override", "POST"));

      assertThat(response.statusCode()).isEqualTo(400);
      assertThat(served.backend.firings()).isEmpty();
    }
  }

  @Test
  void everyAnswerCarriesTheSecurityHeaders() throws Exception {
    try (Served served = new Served()) {
      for (String path : List.of("/", "/api/v1/status", "/metrics", "/nowhere")) {
        Map<String, List<String>> headers = served.get(path).headers().map();

        assertThat(headers.get("content-security-policy").get(0))
            .contains("default-src 'self'", "frame-ancestors 'none'")
            .doesNotContain("unsafe");
        assertThat(headers.get("x-content-type-options")).containsExactly("nosniff");
        assertThat(headers.get("referrer-policy")).containsExactly("no-referrer");
        assertThat(headers).doesNotContainKeys("server", "set-cookie");
      }
    }
  }

  @Test
  void changeNeedsTheConfiguredPassphraseAndALookDoesNot() throws Exception {
    try (Served served = new Served(new FakeBackend(), "cone ten down")) {
      HttpResponse<String> without = served.post("/api/v1/firings", "{}");
      HttpResponse<String> wrong =
          served.send(
              served.change("/api/v1/firings", "{}").header("Authorization", "Bearer cone ten"));
      HttpResponse<String> right =
          served.send(
              served
                  .change("/api/v1/firings", "{}")
                  .header("Authorization", "Bearer cone ten down"));

      assertThat(without.statusCode()).isEqualTo(401);
      assertThat(without.headers().firstValue("WWW-Authenticate").orElseThrow())
          .startsWith("Bearer");
      assertThat(wrong.statusCode()).isEqualTo(401);
      assertThat(right.statusCode()).isEqualTo(201);
      assertThat(served.get("/api/v1/status").statusCode()).isEqualTo(200);
      assertThat(served.get("/api/v1/status").body()).contains("\"passphrase_needed\":true");
    }
  }

  @Test
  void guesserWaitsLongerAndLongerAndOthersDoNot() {
    AtomicLong seconds = new AtomicLong();
    Passphrase passphrase =
        new Passphrase(Optional.of("cone ten down"), () -> seconds.get() * 1_000_000_000L);
    for (int i = 0; i < 3; i++) {
      assertRefused(passphrase, "10.0.0.9", "Bearer guess", 401);
    }

    assertRefused(passphrase, "10.0.0.9", "Bearer cone ten down", 429);
    passphrase.check("10.0.0.7", "Bearer cone ten down");
    seconds.addAndGet(1);
    assertRefused(passphrase, "10.0.0.9", "Bearer guess", 401);
    seconds.addAndGet(1);
    assertRefused(passphrase, "10.0.0.9", "Bearer cone ten down", 429);
    seconds.addAndGet(1);
    passphrase.check("10.0.0.9", "Bearer cone ten down");
  }

  @Test
  void askingForThePassphraseIsNotAGuess() {
    Passphrase passphrase = new Passphrase(Optional.of("cone ten down"), () -> 0);
    for (int i = 0; i < 20; i++) {
      assertRefused(passphrase, "10.0.0.9", null, 401);
    }

    passphrase.check("10.0.0.9", "Bearer cone ten down");
  }

  @Test
  void settingsRefuseWhatCannotWork() {
    assertThatThrownBy(() -> new WebSettings("", 80, Optional.empty(), List.of()))
        .hasMessageContaining("host");
    assertThatThrownBy(() -> new WebSettings("::1", 65_536, Optional.empty(), List.of()))
        .hasMessageContaining("0 to 65535");
    assertThatThrownBy(() -> new WebSettings("::1", 0, Optional.of("short"), List.of()))
        .hasMessageContaining("8 to 200");
    assertThatThrownBy(() -> new WebSettings("::1", 0, Optional.of("ofenwächter"), List.of()))
        .hasMessageContaining("plain letters");
    assertThatThrownBy(() -> new WebSettings("::1", 0, Optional.empty(), List.of("a b")))
        .hasMessageContaining("host name");
  }

  private static void assertRefused(
      Passphrase passphrase, String address, String authorization, int status) {
    assertThatThrownBy(() -> passphrase.check(address, authorization))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.status()).isEqualTo(status));
  }
}
