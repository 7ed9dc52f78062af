package org.climbwatch.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** A real server on a free port before a fake daemon, and a client that asks it. */
final class Served implements AutoCloseable {
  final FakeBackend backend;
  final WebServer server;
  final int port;
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  Served(FakeBackend backend, String passphrase) throws IOException {
    this.backend = backend;
    server =
        new WebServer(
            new WebSettings(
                "127.0.0.1", 0, Optional.ofNullable(passphrase), List.of("kilnshed.local")),
            backend);
    port = server.start();
  }

  Served() throws IOException {
    this(new FakeBackend(), null);
  }

  HttpRequest.Builder to(String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
        .timeout(Duration.ofSeconds(10));
  }

  HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return send(to(path));
  }

  HttpRequest.Builder change(String path, String body) {
    return to(path)
        .header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(body));
  }

  HttpResponse<String> post(String path, String body) throws IOException, InterruptedException {
    return send(change(path, body));
  }

  HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  HttpResponse<java.io.InputStream> stream(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return client.send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
  }

  /** Sends bytes as they are and gives back all that is answered; for what no client sends. */
  String raw(String request) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      socket.setSoTimeout(10_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  static JsonNode json(HttpResponse<String> response) throws IOException {
    return new ObjectMapper().readTree(response.body());
  }

  @Override
  public void close() {
    server.close();
  }
}
