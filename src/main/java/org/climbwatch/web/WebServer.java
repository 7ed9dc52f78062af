package org.climbwatch.web;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.servlet.JavalinServlet;
import io.javalin.http.servlet.ServletEntry;
import java.io.IOException;
import java.io.UncheckedIOException;
import kotlin.LazyKt;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The server: started once, closed once. */
public final class WebServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
  private static final int HEARTBEAT_MS = 10_000;
  private static final int IDLE_TIMEOUT_MS = 30_000;
  private static final int STOP_TIMEOUT_MS = 300;

  /** Counted for each piece that a body comes in, so that very small pieces fill no memory. */
  private static final int BODY_FRAMING_BYTES = 64;

  private final WebSettings settings;
  private final Backend backend;
  private final LiveHub live;
  private Javalin javalin;
  private AutoCloseable listening;

  public WebServer(WebSettings settings, Backend backend) {
    this(settings, backend, HEARTBEAT_MS);
  }

  WebServer(WebSettings settings, Backend backend, long heartbeatMs) {
    this.live = new LiveHub(heartbeatMs);
    this.settings = settings;
    this.backend = backend;
  }

  /**
   * Loads what {@link #start} needs, so that it can be done beside other work. Nothing is served; a
   * failure is left for the start to find.
   */
  public static void prepare() {
    try {
      Server server = new Server(threads());
      new ServerConnector(server, 0, 1, new HttpConnectionFactory(new HttpConfiguration()));
      Javalin.create(config -> config.unsafe.jettyInternal.server = server);
      server.start();
      server.stop();
    } catch (Exception cannotBeLoaded) {
      LOG.debug("the web server was not loaded ahead of time", cannotBeLoaded);
    }
  }

  /**
   * Begins to serve on a socket of its own.
   *
   * @return the port, the one that was found where 0 was asked for
   * @throws IOException when that host and port cannot be had; the message says what to do
   */
  public int start() throws IOException {
    return start(ListenSocket.open(settings));
  }

  /**
   * Begins to serve on a socket, which is its own from now on.
   *
   * @return the port
   * @throws IOException when the socket has been closed
   */
  public int start(ListenSocket socket) throws IOException {
    try {
      javalin = Javalin.create(config -> configure(config, socket));
      javalin.start();
    } catch (RuntimeException failed) {
      stop();
      socket.close();
      throw failed;
    }
    live.start();
    listening = backend.listen(live::accept);
    return javalin.port();
  }

  /** How many live streams are open. */
  int liveClients() {
    return live.clients();
  }

  /** How many live items no stream has been given yet. */
  int liveWaiting() {
    return live.waiting();
  }

  private void configure(JavalinConfig config, ListenSocket socket) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.prefer405over404 = true;
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.http.maxRequestSize = RequestBody.MOST_BYTES;
    jetty(config, socket);
    Passphrase passphrase = new Passphrase(settings.passphrase(), System::nanoTime);
    Guard guard = new Guard(new HostNames(settings.hostNames()), passphrase);
    config.routes.before(guard::check);
    new Routes(backend, live, passphrase).register(config);
    Problems.register(config);
    // without the WebSocket machinery that Javalin would load and nothing here speaks
    config.unsafe.servlet =
        LazyKt.lazyOf(new ServletEntry(null, new JavalinServlet(config.unsafe)));
  }

  private void jetty(JavalinConfig config, ListenSocket socket) {
    Server server = new Server(threads());
    server.setStopTimeout(0);
    server.setErrorHandler(new Problems.BeforeRouting());
    // a body is awaited without a thread: half-sent ones must not keep the page from others
    server.setHandler(
        new EagerContentHandler(
            new EagerContentHandler.RetainedContentLoaderFactory(
                RequestBody.MOST_BYTES, BODY_FRAMING_BYTES, false)));
    config.unsafe.jettyInternal.server = server;
    config.jetty.modifyHttpConfiguration(http -> http.setUriCompliance(UriCompliance.DEFAULT));
    config.jetty.addConnector((jetty, http) -> connector(jetty, http, socket));
  }

  private static QueuedThreadPool threads() {
    QueuedThreadPool threads = new QueuedThreadPool(8, 2, IDLE_TIMEOUT_MS);
    threads.setName("web");
    threads.setStopTimeout(STOP_TIMEOUT_MS);
    threads.setReservedThreads(0);
    return threads;
  }

  private static ServerConnector connector(
      Server server, HttpConfiguration http, ListenSocket socket) {
    ServerConnector connector = new ServerConnector(server, 0, 1, new HttpConnectionFactory(http));
    connector.setIdleTimeout(IDLE_TIMEOUT_MS);
    try {
      connector.open(socket.channel());
    } catch (IOException closed) {
      throw new UncheckedIOException(closed);
    }
    return connector;
  }

  /** Ends every stream and stops within a second. */
  @Override
  public void close() {
    if (listening != null) {
      try {
        listening.close();
      } catch (Exception e) {
        LOG.warn("the backend's live stream did not close", e);
      }
    }
    live.close();
    stop();
  }

  private void stop() {
    if (javalin == null) {
      return;
    }
    try {
      javalin.unsafe.jettyInternal.server.stop();
    } catch (Exception e) {
      LOG.warn("the web server did not stop in good order", e);
    }
  }
}
