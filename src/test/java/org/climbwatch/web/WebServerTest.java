package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class WebServerTest {
  @Test
  void takenPortIsSaidClearly() throws Exception {
    try (Served served = new Served();
        WebServer second =
            new WebServer(
                new WebSettings("127.0.0.1", served.port, Optional.empty(), List.of()),
                new FakeBackend())) {
      assertThatThrownBy(second::start)
          .isInstanceOf(IOException.class)
          .hasMessageContaining("cannot listen on 127.0.0.1:" + served.port)
          .hasMessageContaining("--listen");
    }
  }

  @Test
  void addressOfAnotherMachineIsSaidClearly() {
    // 192.0.2.1 is set aside for documentation (RFC 5737) and is nobody's
    try (WebServer elsewhere =
        new WebServer(
            new WebSettings("192.0.2.1", 0, Optional.empty(), List.of()), new FakeBackend())) {
      assertThatThrownBy(elsewhere::start)
          .isInstanceOf(IOException.class)
          .hasMessageContaining("cannot listen on 192.0.2.1:0");
    }
  }

  @Test
  void listensOnTheGivenAddressOnly() throws Exception {
    try (Served served = new Served()) {
      assertThatThrownBy(() -> new java.net.Socket("127.0.0.2", served.port).close())
          .isInstanceOf(java.net.ConnectException.class);
    }
  }

  @Test
  void closedServerLeavesNothingBehind() throws Exception {
    FakeBackend backend = new FakeBackend();
    Served served = new Served(backend, null);
    served.close();

    assertThat(backend.listeners()).isZero();
    assertThatThrownBy(() -> served.get("/")).isInstanceOf(IOException.class);
    assertThat(Thread.getAllStackTraces().keySet())
        .noneMatch(thread -> thread.isAlive() && thread.getName().startsWith("web-"));
  }
}
