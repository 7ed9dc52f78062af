package org.climbwatch.source.scpi;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.climbwatch.source.port.PtyDevice;

/**
 * A bench instrument on a real pseudo-terminal: answers queries it knows, puts an error into its
 * queue for those it does not, and misbehaves when told to.
 */
public final class InstrumentEmulator implements AutoCloseable {
  private final PtyDevice line;
  private final Map<String, String> answers = new ConcurrentHashMap<>();
  private final ArrayDeque<String> errors = new ArrayDeque<>();
  private final List<String> commands = new ArrayList<>();
  private final StringBuilder held = new StringBuilder();
  private boolean echoes;
  private boolean silent;
  private long delayMillis;

  private InstrumentEmulator(Path link) {
    line = new PtyDevice(link);
    answers.put("*IDN?", "EXAMPLE,BENCH EMULATOR,0,1.0");
  }

  /** Plugs the instrument in: the name leads to its terminal when this returns. */
  public static InstrumentEmulator start(Path link) {
    InstrumentEmulator emulator = new InstrumentEmulator(link);
    emulator.line.hears(emulator::heard);
    emulator.line.plugIn();
    return emulator;
  }

  /** The answer to a query, sent as it is with LF behind it. */
  public void answers(String query, String answer) {
    answers.put(query, answer);
  }

  public synchronized void raises(String error) {
    errors.add(error);
  }

  /** Sends every line back before it does anything, as a terminal program wants it. */
  public synchronized void echoes(boolean on) {
    echoes = on;
  }

  public synchronized void fallsSilent(boolean on) {
    silent = on;
  }

  /** From now on takes so long for each answer, one query after the other. */
  public synchronized void answersAfter(long millis) {
    delayMillis = millis;
  }

  /** What was sent that is no query. */
  public synchronized List<String> commands() {
    return List.copyOf(commands);
  }

  public PtyDevice line() {
    return line;
  }

  private void heard(byte[] bytes) throws InterruptedException {
    held.append(new String(bytes, StandardCharsets.ISO_8859_1));
    for (int end = held.indexOf("\n"); end >= 0; end = held.indexOf("\n")) {
      String message = held.substring(0, end).strip();
      held.delete(0, end + 1);
      obey(message);
    }
  }

  private void obey(String message) throws InterruptedException {
    long delay;
    String answer;
    synchronized (this) {
      if (echoes) {
        send(message + "\r\n");
      }
      answer = silent ? "" : answer(message);
      delay = delayMillis;
    }
    if (!answer.isEmpty()) {
      // the time that the emulated instrument takes
      Thread.sleep(delay);
      send(answer);
    }
  }

  private String answer(String message) {
    if (message.equals("SYST:ERR?")) {
      return (errors.isEmpty() ? "0,\"No error\"" : errors.poll()) + "\n";
    }
    if (!message.endsWith("?") && !message.contains("? ")) {
      commands.add(message);
      return "";
    }
    String answer = answers.get(message);
    if (answer == null) {
      errors.add("-113,\"Undefined header\"");
      return "";
    }
    // a text that ends with ~ is left without its line end
    return answer.endsWith("~") ? answer.substring(0, answer.length() - 1) : answer + "\n";
  }

  private void send(String text) {
    line.send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @Override
  public void close() {
    line.close();
  }
}
