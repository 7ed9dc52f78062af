package org.climbwatch.source.port;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/**
 * The lines that are in use, one for each port name: the first talker on a port opens it, the last
 * one to leave lets go of it. Ports are told apart by the name set, so all who share one write it
 * alike.
 */
public final class SharedPorts {
  /** A place on a line. */
  public interface Place extends AutoCloseable {
    /** Leaves the line. */
    @Override
    void close();
  }

  private final Map<Path, SharedPort> lines = new HashMap<>();

  /**
   * Takes part in the line on a port.
   *
   * @throws IllegalArgumentException when the port is in use with other settings; the message says
   *     with which
   */
  public synchronized Place join(PortSettings settings, Talker talker) {
    Path name = Path.of(settings.port()).normalize();
    SharedPort line = lines.get(name);
    if (line == null) {
      line = new SharedPort(settings);
      lines.put(name, line);
      line.join(talker);
      line.start();
    } else if (!line.settings().equals(settings)) {
      throw new IllegalArgumentException(
          "two probes share "
              + line.settings().describe()
              + " but one wants "
              + settings.describe()
              + "; write baud, parity and stop_bits alike for both");
    } else {
      line.join(talker);
    }
    SharedPort joined = line;
    return () -> leave(name, joined, talker);
  }

  private synchronized void leave(Path name, SharedPort line, Talker talker) {
    if (line.leave(talker)) {
      lines.remove(name, line);
      line.close();
    }
  }
}
