package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.climbwatch.alarm.AlarmKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The live stream, as server-sent events (WHATWG HTML, section 9.2). */
@Timeout(30)
class LiveTest {
  private Served served;

  @BeforeEach
  void start() throws Exception {
    served = new Served();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  private record Message(String id, String event, String data) {}

  /** Reads one stream as a browser would. */
  private final class Stream implements AutoCloseable {
    private final HttpResponse<java.io.InputStream> response;
    private final BufferedReader lines;

    Stream(String lastEventId) throws Exception {
      HttpRequest.Builder request = served.to("/api/v1/live");
      if (lastEventId != null) {
        request.header("Last-Event-ID", lastEventId);
      }
      response = served.stream(request);
      lines = new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8));
      if (response.statusCode() == 200) {
        assertThat(lines.readLine()).startsWith("retry: ");
        assertThat(lines.readLine()).isEmpty();
      }
    }

    Message next() throws Exception {
      String id = null;
      String event = null;
      String data = null;
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("id: ")) {
          id = line.substring(4);
        } else if (line.startsWith("event: ")) {
          event = line.substring(7);
        } else if (line.startsWith("data: ")) {
          data = line.substring(6);
        } else if (line.isEmpty() && data != null) {
          return new Message(id, event, data);
        }
      }
      return null;
    }

    @Override
    public void close() throws IOException {
      lines.close();
    }
  }

  @Test
  void readingsAndEventsComeInOrderWithRisingIds() throws Exception {
    try (Stream stream = new Stream(null)) {
      served.backend.begin("Tea bowls");
      for (int i = 0; i < 100; i++) {
        served.backend.elapse(1000);
        served.backend.measure(20 + i, 60);
      }
      served.backend.raise("a-1", AlarmKind.FALLING, "Line one\nline two");

      Message begun = stream.next();
      assertThat(begun.event()).isEqualTo("event");
      assertThat(begun.data()).contains("\"kind\":\"firing\"", "\"state\":\"began\"");
      int before = number(begun);
      for (int i = 0; i < 100; i++) {
        Message reading = stream.next();
        assertThat(reading.event()).isEqualTo("reading");
        assertThat(reading.data())
            .contains("\"temperature_c\":" + (20 + i) + ",", "\"elapsed_s\":" + (i + 1) + ",");
        assertThat(number(reading)).isEqualTo(++before);
      }
      assertThat(stream.next().data()).contains("Line one\\nline two");
    }
  }

  @Test
  void streamSaysWhatItIs() throws Exception {
    try (Stream stream = new Stream(null)) {
      assertThat(stream.response.headers().firstValue("Content-Type").orElseThrow())
          .startsWith("text/event-stream");
      assertThat(stream.response.headers().firstValue("Cache-Control")).contains("no-store");
    }
  }

  @Test
  void browserThatComesBackMissesNothing() throws Exception {
    String lastSeen;
    try (Stream stream = new Stream(null)) {
      served.backend.measure(100, 60);
      lastSeen = stream.next().id();
    }
    served.backend.measure(101, 60);
    served.backend.measure(102, 60);

    try (Stream stream = new Stream(lastSeen)) {
      assertThat(stream.next().data()).contains("\"temperature_c\":101,");
      assertThat(stream.next().data()).contains("\"temperature_c\":102,");
    }
  }

  @Test
  void idOfAnEarlierRunBringsNothingOld() throws Exception {
    served.backend.measure(100, 60);
    try (Stream stream = new Stream("earlier-1")) {
      served.backend.measure(101, 60);

      assertThat(stream.next().data()).contains("\"temperature_c\":101,");
    }
  }

  @Test
  void clientThatNeverReadsHoldsNobodyUpAndIsCutOff() throws Exception {
    try (Socket deaf = new Socket()) {
      deaf.setReceiveBufferSize(4096);
      deaf.connect(new InetSocketAddress("127.0.0.1", served.port));
      deaf.getOutputStream()
          .write(
              "GET /api/v1/live HTTP/1.1\r\nHost: localhost\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      await(() -> served.server.liveClients() == 1);

      long longestNanos = 0;
      int told = 0;
      while (served.server.liveClients() == 1) {
        long start = System.nanoTime();
        served.backend.measure(told++ % 1000, 60);
        longestNanos = Math.max(longestNanos, System.nanoTime() - start);
        if (told % 1000 == 0) {
          LockSupport.parkNanos(1_000_000);
        }
      }

      // one that waited for the deaf client would wait for ever; a busy machine takes half a second
      assertThat(longestNanos).as("the engine's longest wait, ns").isLessThan(5_000_000_000L);
    }
    // the flood's rest would come faster than any page is meant to take it
    await(() -> served.server.liveWaiting() == 0);
    try (Stream healthy = new Stream(null)) {
      served.backend.begin("Tea bowls");
      Message message = healthy.next();
      while (!message.event().equals("event")) {
        message = healthy.next();
      }
      assertThat(message.data()).contains("Tea bowls");
    }
  }

  @Test
  void streamsAreBoundedAndTheNextIsToldSo() throws Exception {
    List<Stream> open = new ArrayList<>();
    try {
      for (int i = 0; i < LiveHub.MOST_CLIENTS; i++) {
        open.add(new Stream(null));
      }
      try (Stream tooMany = new Stream(null)) {
        assertThat(tooMany.response.statusCode()).isEqualTo(503);
        assertThat(tooMany.lines.readLine()).contains("Too many live streams");
      }
      assertThat(served.get("/metrics").body())
          .contains("climbwatch_live_streams " + LiveHub.MOST_CLIENTS);
    } finally {
      for (Stream stream : open) {
        stream.close();
      }
    }
    // a closed socket is noticed at the next frame
    await(
        () -> {
          served.backend.measure(1, 1);
          return served.server.liveClients() == 0;
        });
  }

  @Test
  void closingEndsStreamsWithinASecond() throws Exception {
    try (Stream stream = new Stream(null)) {
      long start = System.nanoTime();
      served.server.close();

      assertThat(System.nanoTime() - start).isLessThan(1_000_000_000L);
      assertThat(served.backend.listeners()).isZero();
      assertThat(readToEnd(stream)).isTrue();
    }
  }

  @Test
  void heartbeatComesWhileNothingHappens() throws Exception {
    WebSettings anyPort = new WebSettings("127.0.0.1", 0, Optional.empty(), List.of());
    try (WebServer quick = new WebServer(anyPort, new FakeBackend(), 30);
        Socket quiet = new Socket("127.0.0.1", quick.start())) {
      quiet
          .getOutputStream()
          .write(
              "GET /api/v1/live HTTP/1.1\r\nHost: localhost\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      BufferedReader lines =
          new BufferedReader(new InputStreamReader(quiet.getInputStream(), StandardCharsets.UTF_8));
      for (int beats = 0; beats < 3; ) {
        beats += lines.readLine().equals(": still here") ? 1 : 0;
      }
    }
  }

  private static boolean readToEnd(Stream stream) {
    try {
      return stream.next() == null;
    } catch (Exception cutShort) {
      return true;
    }
  }

  private static int number(Message message) {
    return Integer.parseInt(message.id().substring(message.id().indexOf('-') + 1));
  }

  private static void await(BooleanSupplier condition) {
    while (!condition.getAsBoolean()) {
      LockSupport.parkNanos(2_000_000);
    }
  }
}
