package org.climbwatch.source.port;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;

/** An open serial port: moves bytes and knows nothing of them. One thread owns it. */
public final class PortLink implements AutoCloseable {
  private static final int STEPS = 5;
  private static final long STEP_NANOS = 20_000_000;
  private static final int WRITE_MILLIS = 1000;
  private static final int NO_RIGHT = 13;
  private static final int LOCKED = 11;
  private static final int NOT_A_TERMINAL = 25;

  private final SerialPort port;
  private final Path name;
  private final Path device;

  private PortLink(SerialPort port, Path name, Path device) {
    this.port = port;
    this.name = name;
    this.device = device;
  }

  /**
   * Opens the port, following links to whatever device they lead to now.
   *
   * @throws IOException when it can't be opened; the message says why and what to do
   */
  static PortLink open(PortSettings settings) throws IOException {
    Path name = Path.of(settings.port());
    // checked here because jSerialComm tries /dev/<last part> when the path itself is missing,
    // which could be another device
    if (!Files.exists(name)) {
      throw new IOException(name + " is not there; check plug and supply, or the name set");
    }
    Path device = name.toRealPath();
    SerialPort port;
    try {
      port = SerialPort.getCommPort(device.toString());
    } catch (SerialPortInvalidPortException gone) {
      throw new IOException(name + " went away while it was being opened", gone);
    }
    int stopBits = settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
    port.setComPortParameters(settings.baud(), 8, stopBits, settings.parity().code);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(
        SerialPort.TIMEOUT_NONBLOCKING | SerialPort.TIMEOUT_WRITE_BLOCKING, 0, WRITE_MILLIS);
    if (!settings.resetOnOpen()) {
      port.clearDTR();
      port.clearRTS();
    }
    if (!port.openPort()) {
      throw new IOException(name + " " + plainly(port.getLastErrorCode()));
    }
    return new PortLink(port, name, device);
  }

  private static String plainly(int errno) {
    return switch (errno) {
      case NO_RIGHT -> "may not be opened by this user; add it to the group dialout";
      case LOCKED -> "is in use by another program; stop that one";
      case NOT_A_TERMINAL -> "is not a serial port; check the name set";
      // the library does not always keep the reason, so this may be a lock as well
      default ->
          "can't be opened (error " + errno + "); replug it, and stop another program that uses it";
    };
  }

  /**
   * Reads what is there, or waits a tenth of a second for something.
   *
   * <p>Looks every now and then and does not wait in the driver: such a wait never ends once
   * another program has changed the terminal's settings, and a device that speaks only when asked
   * would stay unasked.
   *
   * @return how many bytes, 0 for none, -1 once the port is lost
   */
  public int read(byte[] into) {
    for (int step = 0; step < STEPS; step++) {
      int there = port.bytesAvailable();
      if (there != 0) {
        return there < 0 ? -1 : port.readBytes(into, Math.min(there, into.length));
      }
      LockSupport.parkNanos(STEP_NANOS);
    }
    return leadsHere() ? 0 : -1;
  }

  /** Sends the bytes; whether all of them went. */
  boolean write(byte[] bytes) {
    return port.writeBytes(bytes, bytes.length) == bytes.length;
  }

  /** Whether the name still leads to the device that was opened: a lost one may look just idle. */
  private boolean leadsHere() {
    try {
      return name.toRealPath().equals(device);
    } catch (IOException gone) {
      return false;
    }
  }

  @Override
  public void close() {
    port.closePort();
  }
}
