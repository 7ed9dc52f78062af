package org.climbwatch.source.modbus;

import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;
import org.climbwatch.source.modbus.ReplyScanner.Frame;
import org.climbwatch.source.port.Wire;

/**
 * One question to one unit and its answer. Answers carry no number by which they belong to a
 * question, so three rules keep a late one from being taken for the next:
 *
 * <ol>
 *   <li>what has arrived before a question is sent is thrown away;
 *   <li>an answer must be of the unit asked and of the length asked for;
 *   <li>while an earlier answer may be on its way, one is believed only when no second follows in
 *       three times the timeout, for then it can't have been the late one.
 * </ol>
 */
final class RtuExchange {
  /** So long after a question, in timeouts, a second answer is listened for when in doubt. */
  private static final int DOUBT_TIMEOUTS = 3;

  /** What came of a question. */
  sealed interface Reply {}

  /** What the registers hold, two bytes each. */
  record Registers(byte[] bytes) implements Reply {}

  /** The unit refused, with its exception code. */
  record Refused(int exception) implements Reply {}

  /**
   * No answer that can be used.
   *
   * @param why one word, for counting
   * @param heard whether anything came at all
   */
  record Nothing(String why, boolean heard) implements Reply {}

  private final Wire wire;
  private final int unit;
  private final int function;
  private final long timeoutNanos;
  private final Consumer<String> oddities;
  private final byte[] chunk = new byte[ReplyScanner.LONGEST];

  /**
   * @param oddities told, in one word, what arrived besides the answer
   */
  RtuExchange(Wire wire, int unit, int function, long timeoutNanos, Consumer<String> oddities) {
    this.wire = wire;
    this.unit = unit;
    this.function = function;
    this.timeoutNanos = timeoutNanos;
    this.oddities = oddities;
  }

  /**
   * Asks for registers.
   *
   * @param count how many, 1 to 125
   * @param inDoubt whether an answer to an earlier question may be on its way
   * @throws IOException when the line is lost
   */
  Reply ask(int address, int count, boolean inDoubt) throws IOException {
    if (!hush()) {
      return new Nothing("babble", true);
    }
    wire.send(request(address, count));
    long sent = wire.nanoTime();
    ReplyScanner scanner = new ReplyScanner(function);
    boolean heard = false;
    Optional<Reply> answer = Optional.empty();
    long window = inDoubt ? DOUBT_TIMEOUTS * timeoutNanos : timeoutNanos;
    while (wire.nanoTime() - sent < window) {
      boolean late = wire.nanoTime() - sent >= timeoutNanos;
      if (late && answer.isEmpty()) {
        break;
      }
      int length = wire.receive(chunk);
      heard |= length > 0;
      for (Frame frame : scanner.take(chunk, length)) {
        Optional<Reply> reply = reply(frame, count);
        if (reply.isPresent() && answer.isPresent()) {
          return new Nothing("late", true);
        }
        answer = reply.isPresent() ? reply : answer;
      }
      if (answer.isPresent() && !inDoubt) {
        break;
      }
    }
    return answer.orElse(new Nothing(heard ? "unreadable" : "timeout", heard));
  }

  /** Waits until the line is quiet and drops what came; whether it ever was. */
  private boolean hush() throws IOException {
    long began = wire.nanoTime();
    while (wire.receive(chunk) > 0) {
      oddities.accept("unasked");
      if (wire.nanoTime() - began > timeoutNanos) {
        return false;
      }
    }
    return true;
  }

  private Optional<Reply> reply(Frame frame, int count) {
    if (frame.unit() != unit) {
      // the standard: the response time-out is kept running (Serial Line V1.02, section 2.4.1)
      oddities.accept("wrong_unit");
      return Optional.empty();
    }
    if (frame.exception() != 0) {
      return Optional.of(new Refused(frame.exception()));
    }
    if (frame.registers().length != 2 * count) {
      oddities.accept("wrong_length");
      return Optional.empty();
    }
    return Optional.of(new Registers(frame.registers()));
  }

  private byte[] request(int address, int count) {
    ByteBuffer frame = ByteBuffer.allocate(8);
    frame.put((byte) unit);
    if (function == ModbusSettings.HOLDING_REGISTERS) {
      ReadHoldingRegistersRequest.Serializer.encode(
          new ReadHoldingRegistersRequest(address, count), frame);
    } else {
      ReadInputRegistersRequest.Serializer.encode(
          new ReadInputRegistersRequest(address, count), frame);
    }
    int check = ReplyScanner.check(frame.array(), 0, frame.position());
    frame.put((byte) check).put((byte) (check >> 8));
    return Arrays.copyOf(frame.array(), frame.position());
  }
}
