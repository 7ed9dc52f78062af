package org.climbwatch.source.modbus;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import org.climbwatch.source.port.PtyDevice;

/**
 * One or several transmitters on one RS-485 line, over a real pseudo-terminal. They answer as the
 * standard says, until they are told to misbehave.
 */
public final class TransmitterEmulator implements AutoCloseable {
  private static final int REQUEST_LENGTH = 8;
  private static final int ILLEGAL_ADDRESS = 2;

  private final PtyDevice line;
  private final Map<Integer, Integer> registers = new ConcurrentHashMap<>();
  private final ArrayDeque<byte[]> requests = new ArrayDeque<>();
  private UnaryOperator<byte[]> mischief = answer -> answer;
  private long delayMillis;
  private byte[] held = new byte[0];

  private TransmitterEmulator(Path link) {
    line = new PtyDevice(link);
  }

  /** Plugs the line in: the name leads to its terminal when this returns. */
  public static TransmitterEmulator start(Path link) {
    TransmitterEmulator emulator = new TransmitterEmulator(link);
    emulator.line.hears(emulator::heard);
    emulator.line.plugIn();
    return emulator;
  }

  /** Gives a unit registers, from an address on, for both functions. */
  public void holds(int unit, int address, int... words) {
    for (int i = 0; i < words.length; i++) {
      registers.put(key(unit, address + i), words[i] & 0xFFFF);
    }
  }

  public void holdsFloat(int unit, int address, double number) {
    int bits = Float.floatToIntBits((float) number);
    holds(unit, address, bits >>> 16, bits & 0xFFFF);
  }

  /** Puts each answer through this before it is sent; an empty one is none. */
  public synchronized void misbehaves(UnaryOperator<byte[]> newMischief) {
    mischief = newMischief;
  }

  public void behaves() {
    misbehaves(answer -> answer);
    answersAfter(0);
  }

  /** From now on thinks so long before each answer, one question after the other. */
  public synchronized void answersAfter(long millis) {
    delayMillis = millis;
  }

  public void fallsSilent() {
    misbehaves(answer -> new byte[0]);
  }

  /** How many questions were heard. */
  public synchronized int questions() {
    return requests.size();
  }

  public PtyDevice line() {
    return line;
  }

  private void heard(byte[] bytes) throws InterruptedException {
    byte[] all = RtuFrames.joined(held, bytes);
    int at = 0;
    while (all.length - at >= REQUEST_LENGTH) {
      byte[] request = Arrays.copyOfRange(all, at, at + REQUEST_LENGTH);
      if (isChecked(request)) {
        answer(request);
        at += REQUEST_LENGTH;
      } else {
        at++;
      }
    }
    held = Arrays.copyOfRange(all, at, all.length);
  }

  private static boolean isChecked(byte[] request) {
    int crc = RtuFrames.crc(request, REQUEST_LENGTH - 2);
    return request[6] == (byte) crc && request[7] == (byte) (crc >> 8);
  }

  private void answer(byte[] request) throws InterruptedException {
    byte[] answer = honest(request);
    long delay;
    synchronized (this) {
      requests.add(request);
      answer = mischief.apply(answer);
      delay = delayMillis;
    }
    if (answer.length > 0) {
      // the time that the emulated transmitter takes
      Thread.sleep(delay);
      line.send(answer);
    }
  }

  private byte[] honest(byte[] request) {
    int unit = request[0] & 0xFF;
    int function = request[1] & 0xFF;
    int address = (request[2] & 0xFF) << 8 | request[3] & 0xFF;
    int[] words = new int[(request[4] & 0xFF) << 8 | request[5] & 0xFF];
    if (registers.keySet().stream().noneMatch(key -> key >> 16 == unit)) {
      return new byte[0];
    }
    for (int i = 0; i < words.length; i++) {
      Integer word = registers.get(key(unit, address + i));
      if (word == null) {
        return RtuFrames.exception(unit, function, ILLEGAL_ADDRESS);
      }
      words[i] = word;
    }
    return RtuFrames.answer(unit, function, words);
  }

  private static int key(int unit, int address) {
    return unit << 16 | address;
  }

  @Override
  public void close() {
    line.close();
  }
}
