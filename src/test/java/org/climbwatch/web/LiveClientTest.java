package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/**
 * The moment between a stream's joining and its beginning, which a real socket gives only now and
 * then; all else of the stream is tested over one in {@link LiveTest}.
 */
class LiveClientTest {
  /** Written to before it has a listener, Jetty's stream blocks and takes no listener any more. */
  private static final class Output extends ServletOutputStream {
    private final ByteArrayOutputStream taken = new ByteArrayOutputStream();
    private WriteListener listener;

    @Override
    public boolean isReady() {
      assertThat(listener).as("the listener must be set first").isNotNull();
      return true;
    }

    @Override
    public void setWriteListener(WriteListener newListener) {
      assertThat(taken.size()).as("written before the listener was set").isZero();
      listener = newListener;
    }

    @Override
    public void write(int octet) {
      taken.write(octet);
    }

    private String text() {
      return taken.toString(StandardCharsets.UTF_8);
    }
  }

  private final Output out = new Output();
  private final LiveClient client = new LiveClient(null, out);

  @Test
  void newsThatComesBeforeAStreamHasBegunWaitsForItsBeginning() throws Exception {
    client.prepare(bytes("opening "));
    client.send(bytes("early "));

    assertThat(out.text()).isEmpty();

    client.begin();
    client.send(bytes("earlier than the first call of the listener "));
    out.listener.onWritePossible();
    client.send(bytes("late"));

    assertThat(out.text())
        .isEqualTo("opening early earlier than the first call of the listener late");
    assertThat(client.done()).isNotDone();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
