package org.climbwatch.source.port;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * One line on which several talkers take turns: never two at a time. Whose turn has been due the
 * longest goes first, so a slow one delays the others but never starves them.
 */
final class SharedPort implements PortKeeper.Use {
  /** Looks at the line between turns, so that its loss is seen. */
  private static final int IDLE_BYTES = 256;

  private final PortSettings settings;
  private final PortKeeper keeper;
  private final Map<Talker, Long> dueNanos = new LinkedHashMap<>();
  private String trouble = "";
  private boolean open;

  SharedPort(PortSettings settings) {
    this.settings = settings;
    this.keeper = new PortKeeper("line-" + settings.port(), settings, this);
  }

  PortSettings settings() {
    return settings;
  }

  void start() {
    keeper.start();
  }

  synchronized void join(Talker talker) {
    dueNanos.put(talker, System.nanoTime());
    if (open) {
      talker.opened();
    } else if (!trouble.isEmpty()) {
      talker.gone(trouble);
    }
  }

  /** Whether nobody is left. */
  synchronized boolean leave(Talker talker) {
    dueNanos.remove(talker);
    return dueNanos.isEmpty();
  }

  void close() {
    keeper.close();
  }

  @Override
  public synchronized void opened() {
    open = true;
    trouble = "";
    dueNanos.keySet().forEach(Talker::opened);
  }

  @Override
  public synchronized void gone(String reason) {
    open = false;
    trouble = reason;
    dueNanos.keySet().forEach(talker -> talker.gone(reason));
  }

  @Override
  public void use(PortLink link, BooleanSupplier stopped) throws IOException {
    LinkWire wire = new LinkWire(link, stopped);
    byte[] unasked = new byte[IDLE_BYTES];
    while (!stopped.getAsBoolean()) {
      Talker next = next();
      if (next == null) {
        wire.receive(unasked);
      } else {
        turn(next, wire);
      }
    }
  }

  private void turn(Talker talker, Wire wire) throws IOException {
    Talker.Left left = talker.turn(wire);
    synchronized (this) {
      dueNanos.replace(talker, System.nanoTime() + talker.pause().toNanos());
      if (left == Talker.Left.ANSWER_PENDING) {
        dueNanos.keySet().forEach(each -> each.answerPending(talker));
      }
    }
  }

  /** Whose turn it is, or null while none is due. */
  private synchronized Talker next() {
    long now = System.nanoTime();
    Talker longest = null;
    for (Talker each : dueNanos.keySet()) {
      boolean due = dueNanos.get(each) - now <= 0;
      if (due && (longest == null || dueNanos.get(each) - dueNanos.get(longest) < 0)) {
        longest = each;
      }
    }
    return longest;
  }

  /** The link, with its loss and its end as exceptions. */
  private record LinkWire(PortLink link, BooleanSupplier stopped) implements Wire {
    @Override
    public void send(byte[] bytes) throws IOException {
      if (!link.write(bytes)) {
        throw new IOException("what was sent did not go out; check plug and supply");
      }
    }

    @Override
    public int receive(byte[] into) throws IOException {
      if (stopped.getAsBoolean()) {
        throw new IOException("being closed");
      }
      int count = link.read(into);
      if (count < 0) {
        throw new IOException("the port was lost; check plug and supply");
      }
      return count;
    }

    @Override
    public long nanoTime() {
      return System.nanoTime();
    }
  }
}
