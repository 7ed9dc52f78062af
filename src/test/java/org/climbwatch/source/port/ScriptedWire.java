package org.climbwatch.source.port;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** A line whose time goes on only while somebody waits on it, and whose other end is a script. */
public final class ScriptedWire implements Wire {
  private static final long WAIT_NANOS = 100_000_000;

  /** The other end. */
  @FunctionalInterface
  public interface Device {
    void heard(byte[] bytes, ScriptedWire wire);
  }

  private record Arrival(long atNanos, byte[] bytes) {}

  private final PriorityQueue<Arrival> arrivals =
      new PriorityQueue<>(Comparator.comparingLong(Arrival::atNanos));
  private final List<byte[]> sent = new ArrayList<>();
  private final Device device;
  private long nanos = 1_000;

  public ScriptedWire(Device device) {
    this.device = device;
  }

  /** From the device, so many milliseconds from now. */
  public void arrives(long inMillis, byte[] bytes) {
    arrivals.add(new Arrival(nanos + inMillis * 1_000_000, bytes));
  }

  public List<byte[]> sent() {
    return sent;
  }

  @Override
  public void send(byte[] bytes) {
    sent.add(bytes);
    device.heard(bytes, this);
  }

  @Override
  public int receive(byte[] into) throws IOException {
    Arrival next = arrivals.peek();
    if (next == null || next.atNanos() > nanos + WAIT_NANOS) {
      nanos += WAIT_NANOS;
      return 0;
    }
    arrivals.poll();
    nanos = Math.max(nanos, next.atNanos());
    System.arraycopy(next.bytes(), 0, into, 0, next.bytes().length);
    return next.bytes().length;
  }

  @Override
  public long nanoTime() {
    return nanos;
  }
}
