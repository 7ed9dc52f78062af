package org.climbwatch.web;

import io.javalin.http.Context;
import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;

/**
 * One open stream. Written without ever blocking: what the socket does not take waits here, and
 * whoever lets too much wait is cut off and may come again.
 */
final class LiveClient implements WriteListener {
  /** Frames; half a minute of the fastest readings that the page is meant for. */
  static final int MOST_WAITING = 512;

  private final ServletRequest request;
  private final ServletOutputStream out;
  private final CompletableFuture<Void> done = new CompletableFuture<>();
  // both guarded by this
  private final Queue<byte[]> waiting = new ArrayDeque<>();
  private boolean unflushed;
  private boolean begun;

  LiveClient(ServletRequest request, ServletOutputStream out) {
    this.request = request;
    this.out = out;
  }

  /** Takes over a request whose asynchronous handling has begun. */
  static LiveClient open(Context context) throws IOException {
    context.req().getAsyncContext().setTimeout(0);
    context.res().setContentType("text/event-stream;charset=utf-8");
    return new LiveClient(context.req(), context.res().getOutputStream());
  }

  /** Begins to send what waits. */
  void begin() {
    out.setWriteListener(this);
  }

  /** Sends a frame now or as soon as the socket takes it. */
  void send(byte[] frame) {
    synchronized (this) {
      if (done.isDone()) {
        return;
      }
      waiting.add(frame);
      if (!begun) {
        return; // before its listener is set the stream would be written to and block
      }
    }
    drain();
  }

  /** Puts a frame behind the others before sending has begun. */
  synchronized void prepare(byte[] frame) {
    waiting.add(frame);
  }

  private void drain() {
    try {
      if (!pushOut()) {
        cut();
      }
    } catch (IOException | IllegalStateException gone) {
      end();
    }
  }

  /** Writes while the socket takes it. False when too much waits. */
  private synchronized boolean pushOut() throws IOException {
    while (!done.isDone() && out.isReady()) {
      byte[] next = waiting.poll();
      if (next != null) {
        out.write(next);
        unflushed = true;
      } else if (unflushed) {
        unflushed = false;
        out.flush();
      } else {
        return true;
      }
    }
    return waiting.size() <= MOST_WAITING;
  }

  @Override
  public void onWritePossible() {
    synchronized (this) {
      begun = true;
    }
    drain();
  }

  @Override
  public void onError(Throwable gone) {
    end();
  }

  /** Ends the stream in good order. */
  void end() {
    done.complete(null);
  }

  private void cut() {
    Connections.cut(request);
    end();
  }

  /** Completes once the stream has ended, from whichever side. */
  CompletableFuture<Void> done() {
    return done;
  }
}
