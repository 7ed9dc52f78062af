package org.climbwatch.source.serial;

import java.time.Duration;
import java.util.List;
import org.climbwatch.source.port.Parity;
import org.climbwatch.source.port.PortSettings;

/**
 * How a serial line is opened and when its silence becomes a fault. Always eight data bits, no
 * parity, one stop bit, no flow control.
 *
 * @param port absolute path, for instance a name under {@code /dev/serial/by-id/} or {@code
 *     /dev/ttyUSB0}; a link is followed anew at each opening
 * @param baud bits a second, one of {@link #BAUDS}
 * @param silence without a readable line until the reading is a fault, 1 s to 10 min
 * @param resetOnOpen whether DTR and RTS are left raised on opening. Boards with a separate USB
 *     chip then start anew, which costs them 1 to 2 s; boards with USB in the processor often send
 *     nothing unless DTR is raised. False lowers both
 */
public record SerialSettings(String port, int baud, Duration silence, boolean resetOnOpen) {
  public static final List<Integer> BAUDS = PortSettings.BAUDS;
  public static final int DEFAULT_BAUD = 9600;
  public static final Duration DEFAULT_SILENCE = Duration.ofSeconds(10);

  private static final Duration LEAST_SILENCE = Duration.ofSeconds(1);
  private static final Duration MOST_SILENCE = Duration.ofMinutes(10);

  public SerialSettings {
    // refuses a wrong port or speed
    new PortSettings(port, baud, Parity.NONE, 1, resetOnOpen);
    if (silence.compareTo(LEAST_SILENCE) < 0 || silence.compareTo(MOST_SILENCE) > 0) {
      throw new IllegalArgumentException(
          "silence must be 1 to 600 s, was " + silence.toMillis() / 1000.0 + " s");
    }
  }

  /** How the port is opened. */
  PortSettings line() {
    return new PortSettings(port, baud, Parity.NONE, 1, resetOnOpen);
  }

  /** A port with 9600 baud, 10 s of silence, and the control lines left raised. */
  public static SerialSettings of(String port) {
    return new SerialSettings(port, DEFAULT_BAUD, DEFAULT_SILENCE, true);
  }
}
