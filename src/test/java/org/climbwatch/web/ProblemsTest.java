package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every error is a problem document (RFC 9457, section 3: its members and media type). */
class ProblemsTest {
  private Served served;

  @BeforeEach
  void start() throws Exception {
    served = new Served();
    served.backend.begin("Tea bowls");
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @ParameterizedTest(name = "GET {0} gives {1}")
  @CsvSource({
    "/nowhere, 404",
    "/page/../index.html, 404",
    "/page/nothing.js, 404",
    "/api/v1/firings/9, 404",
    "/api/v1/firings/-1, 404",
    "/api/v1/firings/x, 404",
    "/api/v1/firings/99999999999999999999, 404",
    "/api/v1/firings/9/curve, 404",
    "/api/v1/firings/9/events, 404",
    "/api/v1/firings/9/export.csv, 404",
    "/api/v1/firings/1/curve?points=9, 400",
    "/api/v1/firings/1/curve?points=20001, 400",
    "/api/v1/firings/1/curve?points=-5, 400",
    "/api/v1/firings/1/curve?points=many, 400",
    "/api/v1/firings/1/curve?points=, 400",
  })
  void wrongAddress(String path, int status) throws Exception {
    assertProblem(served.get(path), status, path.replaceFirst("\\?.*", ""));
  }

  @ParameterizedTest(name = "POST {0} {1} gives {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "/api/v1/firings | {\"name\":\"x\"} | 409",
        "/api/v1/firings | {\"name\": | 400",
        "/api/v1/firings | [] | 400",
        "/api/v1/firings | \"x\" | 400",
        "/api/v1/firings | {} {} | 400",
        "/api/v1/firings | {\"name\":7} | 400",
        "/api/v1/firings | {\"name\":\"a\",\"name\":\"b\"} | 400",
        "/api/v1/firings | {\"name\":\"\\u0007\"} | 400",
        "/api/v1/firings | {\"name\":\"\\ud83d\"} | 400",
        "/api/v1/firings/1/notes | {\"text\":\"frost \\udd25 thick\"} | 400",
        "/api/v1/firings | {\"nmae\":\"x\"} | 400",
        "/api/v1/firings/9/end | {} | 404",
        "/api/v1/firings/9/notes | {\"text\":\"x\"} | 404",
        "/api/v1/firings/1/notes | {} | 400",
        "/api/v1/firings/1/notes | {\"text\":\"  \"} | 400",
        "/api/v1/firings/1/phase | {\"phase\":\"idle\"} | 400",
        "/api/v1/firings/1/phase | {\"phase\":\"drying\"} | 400",
        "/api/v1/firings/1/phase | {} | 400",
        "/api/v1/alarms/none/acknowledge | {} | 404",
        "/api/v1/alarms/none/acknowledge | {\"who\":7} | 400",
        "/api/v1/alarms/none/snooze | {} | 404",
        "/api/v1/alarms/none/unshelve | {} | 404",
        "/api/v1/alarms/none/reset | {} | 404",
        "/api/v1/alarms/none/shelve | {\"minutes\":30} | 404",
        "/api/v1/alarms/none/shelve | {} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":30,\"duration_s\":1800} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":\"30\"} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":0} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":-5} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":481} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":1e300} | 400",
        "/api/v1/alarms/none/shelve | {\"minutes\":1.001} | 400",
        "/api/v1/alarms/none/shelve | {\"duration_s\":59} | 400",
        "/api/v1/alarms/none/shelve | {\"duration_s\":28801} | 400",
        "/api/v1/alarms/none/shelve | {\"duration_s\":true} | 400",
        "/api/v1/alarms/none/shelve | {\"duration_s\":NaN} | 400",
      })
  void wrongChange(String path, String body, int status) throws Exception {
    assertProblem(served.post(path, body), status, path);
    assertThat(served.backend.historyOf(1)).hasSize(1);
  }

  @Test
  void tooLongTextNamesTheLimit() throws Exception {
    HttpResponse<String> response =
        served.post("/api/v1/firings/1/notes", "{\"text\":\"" + "x".repeat(4001) + "\"}");

    assertProblem(response, 400, "/api/v1/firings/1/notes");
    assertThat(response.body()).contains("4000").contains("4001");
  }

  @Test
  void tooLongBodyIsRefusedWithAndWithoutItsLength() throws Exception {
    String body = " ".repeat(RequestBody.MOST_BYTES + 1);
    HttpRequest.Builder chunked =
        served
            .to("/api/v1/firings/1/notes")
            .header("Content-Type", "application/json")
            .POST(
                HttpRequest.BodyPublishers.ofInputStream(
                    () -> new java.io.ByteArrayInputStream(body.getBytes())));

    assertProblem(served.post("/api/v1/firings/1/notes", body), 413, "/api/v1/firings/1/notes");
    assertProblem(served.send(chunked), 413, "/api/v1/firings/1/notes");
  }

  @Test
  void bodyThatIsNotUtf8IsRefused() throws Exception {
    HttpRequest.Builder latin1 =
        served
            .to("/api/v1/firings/1/notes")
            .header("Content-Type", "application/json")
            .POST(
                HttpRequest.BodyPublishers.ofByteArray(
                    "{\"text\":\"\u00e4\u00e4\"}"
                        .getBytes(java.nio.charset.StandardCharsets.ISO_8859_1)));

    assertProblem(served.send(latin1), 400, "/api/v1/firings/1/notes");
  }

  @ParameterizedTest(name = "{0} {1} is not allowed, {2} is")
  @CsvSource(
      delimiter = '|',
      value = {
        "PUT | /api/v1/status | GET, HEAD",
        "DELETE | /api/v1/firings/1 | GET, HEAD",
        "OPTIONS | /api/v1/firings | GET, POST, HEAD",
        "GET | /api/v1/firings/1/end | POST",
        "PATCH | / | GET, HEAD",
      })
  void wrongMethodNamesTheRightOnes(String method, String path, String allowed) throws Exception {
    HttpResponse<String> response =
        served.send(served.to(path).method(method, HttpRequest.BodyPublishers.noBody()));

    assertProblem(response, 405, path);
    assertThat(response.headers().firstValue("Allow").orElseThrow().split(", "))
        .containsExactlyInAnyOrder(allowed.split(", "));
  }

  @Test
  void faultOfOursTellsNothingOfItsInside() throws Exception {
    served.backend.breakWith(new IllegalStateException("secret inside"));

    HttpResponse<String> response = served.get("/api/v1/status");

    assertProblem(response, 500, "/api/v1/status");
    assertThat(response.body()).doesNotContain("secret").doesNotContain("Exception");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"'GET /%00 HTTP/1.1', 400", "'GET /a/..;/b HTTP/1.1', 400", "'BROKEN', 400"})
  void whatIsNotValidHttpIsAProblemToo(String requestLine, String status) throws Exception {
    String answer = served.raw(requestLine + "\r\nHost: localhost\r\nConnection: close\r\n\r\n");

    assertThat(answer).startsWith("HTTP/1.1 " + status);
    assertThat(answer).contains("application/problem+json").contains("\"status\":" + status);
    assertThat(answer).contains("nosniff");
  }

  @Test
  void hugeHeadersAreAProblemToo() throws Exception {
    HttpResponse<String> response =
        served.send(served.to("/api/v1/status").header("X-Long", "x".repeat(20_000)));

    assertThat(response.statusCode()).isEqualTo(431);
    assertThat(response.headers().firstValue("Content-Type")).contains("application/problem+json");
  }

  private static void assertProblem(HttpResponse<String> response, int status, String path)
      throws Exception {
    assertThat(response.statusCode()).isEqualTo(status);
    assertThat(response.headers().firstValue("Content-Type")).contains("application/problem+json");
    JsonNode problem = Served.json(response);
    assertThat(problem.get("type").asText()).isEqualTo("about:blank");
    assertThat(problem.get("status").asInt()).isEqualTo(status);
    assertThat(problem.get("title").asText()).isNotBlank();
    assertThat(problem.get("detail").asText()).isNotBlank();
    assertThat(problem.get("instance").asText()).isEqualTo(path);
  }
}
