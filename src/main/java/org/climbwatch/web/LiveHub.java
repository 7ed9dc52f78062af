package org.climbwatch.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Hands what happens to every open stream, as server-sent events (WHATWG HTML, section 9.2).
 *
 * <p>The engine only ever puts an item into a queue. One thread makes the frames and gives them to
 * the clients, none of which can hold it up. The last frames are kept, so that a browser that comes
 * back with the id of the last one it saw misses nothing.
 */
final class LiveHub implements AutoCloseable {
  static final int MOST_CLIENTS = 32;

  private static final int MOST_ITEMS_WAITING = 4096;
  private static final int FRAMES_KEPT = 128;
  private static final byte[] HEARTBEAT = ": still here\n\n".getBytes(StandardCharsets.UTF_8);
  private static final byte[] OPENING = "retry: 2000\n\n".getBytes(StandardCharsets.UTF_8);

  private record Frame(String id, byte[] bytes) {}

  private final long heartbeatMs;

  /** Sets this run's ids apart from those of an earlier one. */
  private final String run = Long.toString(System.currentTimeMillis(), 36);

  private final BlockingQueue<Live> items = new LinkedBlockingQueue<>(MOST_ITEMS_WAITING);
  private final Thread thread = new Thread(this::serve, "live");
  // guarded by this
  private final Set<LiveClient> clients = new LinkedHashSet<>();
  private final Deque<Frame> kept = new ArrayDeque<>();
  private long count;
  private boolean closed;

  LiveHub(long heartbeatMs) {
    this.heartbeatMs = heartbeatMs;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Takes an item and returns at once. Should the queue be full, the item is left out. */
  void accept(Live item) {
    items.offer(item);
  }

  /** How many streams are open. */
  synchronized int clients() {
    return clients.size();
  }

  /** How many items no client has been given yet. */
  int waiting() {
    return items.size();
  }

  /** Answers a request with the stream. */
  void open(Context context) {
    synchronized (this) {
      if (closed || clients.size() >= MOST_CLIENTS) {
        throw new Refused(
            503, "Too many live streams", "At most " + MOST_CLIENTS + "; close a page elsewhere.");
      }
    }
    String lastSeen = context.header("Last-Event-ID");
    context.future(() -> join(context, lastSeen));
  }

  private CompletableFuture<Void> join(Context context, String lastSeen) {
    LiveClient client;
    try {
      client = LiveClient.open(context);
    } catch (IOException gone) {
      return CompletableFuture.failedFuture(gone);
    }
    synchronized (this) {
      client.prepare(OPENING);
      missed(lastSeen).forEach(client::prepare);
      clients.add(client);
    }
    client.done().whenComplete((nothing, error) -> leave(client));
    client.begin();
    return client.done();
  }

  private synchronized void leave(LiveClient client) {
    clients.remove(client);
  }

  /** The frames after the one last seen; none when that is not among those kept. */
  private List<byte[]> missed(String lastSeen) {
    if (lastSeen == null || kept.stream().noneMatch(frame -> frame.id.equals(lastSeen))) {
      return List.of();
    }
    return kept.stream()
        .dropWhile(frame -> !frame.id.equals(lastSeen))
        .skip(1)
        .map(Frame::bytes)
        .toList();
  }

  private void serve() {
    long nextHeartbeat = System.nanoTime() + heartbeatMs * 1_000_000;
    try {
      while (true) {
        Live item = items.poll(nextHeartbeat - System.nanoTime(), TimeUnit.NANOSECONDS);
        if (item != null) {
          sendAll(frame(item));
        } else {
          sendAll(HEARTBEAT);
          nextHeartbeat = System.nanoTime() + heartbeatMs * 1_000_000;
        }
      }
    } catch (InterruptedException closing) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized byte[] frame(Live item) {
    String id = run + "-" + ++count;
    String name = item instanceof Live.NewReading ? "reading" : "event";
    String data = new String(Json.bytes(out -> RecordJson.live(out, item)), StandardCharsets.UTF_8);
    byte[] bytes =
        ("id: " + id + "\nevent: " + name + "\ndata: " + data + "\n\n")
            .getBytes(StandardCharsets.UTF_8);
    kept.addLast(new Frame(id, bytes));
    if (kept.size() > FRAMES_KEPT) {
      kept.removeFirst();
    }
    return bytes;
  }

  private void sendAll(byte[] frame) {
    for (LiveClient client : snapshot()) {
      client.send(frame);
    }
  }

  private synchronized List<LiveClient> snapshot() {
    return List.copyOf(clients);
  }

  @Override
  public void close() {
    synchronized (this) {
      closed = true;
    }
    thread.interrupt();
    snapshot().forEach(LiveClient::end);
  }
}
