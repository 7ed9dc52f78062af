package org.climbwatch.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * A path to a server whose connections can go dumb: they stay open, and nothing comes through any
 * more. New ones work. So it is with a phone that has slept while its access point was changed.
 */
final class OneWayPath implements AutoCloseable {
  private final ServerSocket entry;
  private final int exit;
  private final List<Connection> connections = new CopyOnWriteArrayList<>();

  private static final class Connection {
    private final Socket in;
    private final Socket out;
    private volatile boolean dumb;

    Connection(Socket in, Socket out) {
      this.in = in;
      this.out = out;
    }

    void start() {
      thread(() -> carry(in, out));
      thread(() -> carry(out, in));
    }

    private void carry(Socket from, Socket to) {
      byte[] bytes = new byte[8192];
      try (InputStream source = from.getInputStream();
          OutputStream sink = to.getOutputStream()) {
        for (int n = source.read(bytes); n >= 0; n = source.read(bytes)) {
          if (!dumb) {
            sink.write(bytes, 0, n);
          }
        }
      } catch (IOException gone) {
        // the other end has closed; so does this one
      }
    }
  }

  /**
   * @param exit the server's port on this machine
   */
  OneWayPath(int exit) throws IOException {
    this.exit = exit;
    entry = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    thread(this::accept);
  }

  int port() {
    return entry.getLocalPort();
  }

  /** All that is open now carries nothing from now on. */
  void goDumb() {
    connections.forEach(one -> one.dumb = true);
  }

  private void accept() {
    try {
      while (true) {
        Socket in = entry.accept();
        Connection one = new Connection(in, new Socket(InetAddress.getLoopbackAddress(), exit));
        connections.add(one);
        one.start();
      }
    } catch (IOException closed) {
      // by close()
    }
  }

  private static void thread(Runnable run) {
    Thread thread = new Thread(run, "path");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    entry.close();
    for (Connection one : connections) {
      one.in.close();
      one.out.close();
    }
  }
}
