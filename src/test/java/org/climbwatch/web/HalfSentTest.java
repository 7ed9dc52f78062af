package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Clients that begin a change and never end it, on real sockets. */
class HalfSentTest {
  /** Far under the 30 s after which the server gives a silent client up. */
  private static final Duration SOON = Duration.ofSeconds(5);

  @Test
  void manyHalfSentChangesKeepNeitherThePageNorAnotherChangeWaiting() throws Exception {
    List<Socket> sockets = new ArrayList<>();
    try (Served served = new Served()) {
      served.backend.begin("Tea bowls");
      for (int i = 0; i < 40; i++) {
        sockets.add(halfSent(served, "{\"text\":\"half"));
      }

      HttpResponse<String> status = served.send(served.to("/api/v1/status").timeout(SOON));
      HttpResponse<String> note =
          served.send(
              served.change("/api/v1/firings/1/notes", "{\"text\":\"whole\"}").timeout(SOON));

      assertThat(status.statusCode()).isEqualTo(200);
      assertThat(note.statusCode()).isEqualTo(201);
    } finally {
      for (Socket socket : sockets) {
        socket.close();
      }
    }
  }

  @Test
  void changeThatComesInPiecesIsTakenWhole() throws Exception {
    try (Served served = new Served()) {
      served.backend.begin("Tea bowls");
      try (Socket socket = halfSent(served, "{\"text\":\"first ")) {
        socket.setSoTimeout((int) SOON.toMillis());
        socket.getOutputStream().write("second\"}".getBytes(StandardCharsets.US_ASCII));
        byte[] head = socket.getInputStream().readNBytes("HTTP/1.1 201".length());

        assertThat(new String(head, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 201");
      }
      assertThat(served.backend.historyOf(1).toString()).contains("first second");
    }
  }

  /** The head of a note, and less of its body than the head says. */
  private static Socket halfSent(Served served, String begun) throws Exception {
    Socket socket = new Socket("127.0.0.1", served.port);
    int length = begun.length() + "second\"}".length();
    String request =
        "POST /api/v1/firings/1/notes HTTP/1.1\r\nHost: 127.0.0.1\r\n"
            + "Content-Type: application/json\r\nContent-Length: "
            + length
            + "\r\n\r\n"
            + begun;
    socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
    return socket;
  }
}
