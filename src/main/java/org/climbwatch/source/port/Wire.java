package org.climbwatch.source.port;

import java.io.IOException;

/** An open line as one who asks and waits sees it. One thread owns it. */
public interface Wire {
  /**
   * Sends all bytes.
   *
   * @throws IOException when the line is lost
   */
  void send(byte[] bytes) throws IOException;

  /**
   * Reads what is there, or waits a tenth of a second or so for something.
   *
   * @return how many bytes, 0 for none
   * @throws IOException when the line is lost, or to be let go
   */
  int receive(byte[] into) throws IOException;

  /** Monotonic nanoseconds, by which deadlines on this line are kept. */
  long nanoTime();
}
