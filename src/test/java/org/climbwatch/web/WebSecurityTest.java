package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Who may ask and who may change, over real HTTP. */
class WebSecurityTest {
  private static final String PASSPHRASE = "shelf and prop";

  private final HttpClient http = HttpClient.newHttpClient();
  private WebServer server;
  private int port;

  @AfterEach
  void stop() {
    server.close();
  }

  @Test
  void changeFromThisMachineNeedsNoPassphraseWhenNoneIsSet() throws Exception {
    start(Optional.empty());

    assertThat(post("/api/v1/firings", "Content-Type", "application/json").statusCode())
        .isEqualTo(201);
  }

  @Test
  void changeWithoutThePassphraseIsRefusedAndWithItDone() throws Exception {
    start(Optional.of(PASSPHRASE));
    String[] bare = {"Content-Type", "application/json"};
    String[] right = {"Content-Type", "application/json", "Authorization", "Bearer " + PASSPHRASE};
    String[] wrong = {"Content-Type", "application/json", "Authorization", "Bearer shelf"};

    assertThat(post("/api/v1/firings", bare).statusCode()).isEqualTo(401);
    assertThat(post("/api/v1/firings", wrong).statusCode()).isEqualTo(401);
    assertThat(post("/api/v1/firings", right).statusCode()).isEqualTo(201);
    assertThat(get("/api/v1/status").statusCode()).isEqualTo(200);
  }

  @Test
  void anotherSiteCannotChangeAnything() throws Exception {
    start(Optional.empty());

    HttpResponse<String> foreign =
        post(
            "/api/v1/firings",
            "Content-Type",
            "application/json",
            "Origin",
            "http://elsewhere.example");
    HttpResponse<String> form = post("/api/v1/firings", "Content-Type", "text/plain");

    assertThat(foreign.statusCode()).isEqualTo(403);
    assertThat(form.statusCode()).isEqualTo(415);
    assertThat(foreign.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
  }

  /** A rebound name reaches this address under a host name that is not ours. */
  @Test
  void reboundHostNameIsRefusedAlsoForReading() throws Exception {
    start(Optional.empty());
    try (Socket socket = new Socket("127.0.0.1", port);
        InputStream in = socket.getInputStream()) {
      socket
          .getOutputStream()
          .write(
              "GET /api/v1/status HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      String answer = new String(in.readAllBytes(), StandardCharsets.UTF_8);

      assertThat(answer).matches("(?s)HTTP/1.1 4(03|21) .*");
      assertThat(answer).contains("application/problem+json").doesNotContain("temperature_c");
    }
  }

  @Test
  void errorsAreProblemDocuments() throws Exception {
    start(Optional.empty());
    for (HttpResponse<String> answer :
        List.of(
            get("/api/v1/nothing"),
            get("/api/v1/firings/999999"),
            get("/api/v1/firings/1/curve?points=ten"),
            post("/api/v1/status", "Content-Type", "application/json"))) {
      assertThat(answer.statusCode()).isBetween(400, 499);
      assertThat(answer.headers().firstValue("Content-Type").orElse(""))
          .startsWith("application/problem+json");
      assertThat(answer.body()).contains("\"status\"", "\"title\"", "\"detail\"");
    }
  }

  @Test
  void metricsEndAsOpenMetricsMust() throws Exception {
    start(Optional.empty());

    HttpResponse<String> answer = get("/metrics");

    assertThat(answer.headers().firstValue("Content-Type").orElse(""))
        .startsWith("application/openmetrics-text");
    assertThat(answer.body()).endsWith("# EOF\n");
  }

  private void start(Optional<String> passphrase) throws IOException {
    server =
        new WebServer(new WebSettings("127.0.0.1", 0, passphrase, List.of()), new FakeBackend());
    port = server.start();
  }

  private HttpResponse<String> get(String path) throws Exception {
    return http.send(
        HttpRequest.newBuilder(uri(path)).build(), HttpResponse.BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String path, String... headers) throws Exception {
    return http.send(
        HttpRequest.newBuilder(uri(path))
            .headers(headers)
            .POST(HttpRequest.BodyPublishers.ofString("{}"))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private URI uri(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }
}
