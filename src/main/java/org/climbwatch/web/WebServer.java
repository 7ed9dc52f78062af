package org.climbwatch.web;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.servlet.JavalinServlet;
import io.javalin.http.servlet.ServletEntry;
import java.io.IOException;
import java.net.BindException;
import java.nio.channels.UnresolvedAddressException;
import kotlin.LazyKt;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The server: started once, closed once. */
public final class WebServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
  private static final int HEARTBEAT_MS = 10_000;
  private static final int IDLE_TIMEOUT_MS = 30_000;
  private static final int STOP_TIMEOUT_MS = 300;

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
   * Begins to serve.
   *
   * @return the port, the one that was found where 0 was asked for
   * @throws IOException when that host and port cannot be had; the message says what to do
   */
  public int start() throws IOException {
    javalin = Javalin.create(this::configure);
    try {
      javalin.start();
    } catch (RuntimeException failed) {
      stop();
      throw cannotListen(failed);
    }
    live.start();
    listening = backend.listen(live::accept);
    return javalin.port();
  }

  /** How many live streams are open. */
  int liveClients() {
    return live.clients();
  }

  private IOException cannotListen(RuntimeException failed) {
    for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
      if (cause instanceof BindException || cause instanceof UnresolvedAddressException) {
        String why = cause.getMessage() == null ? "no such host" : cause.getMessage();
        return new IOException(
            "cannot listen on "
                + settings.host()
                + ":"
                + settings.port()
                + " ("
                + why
                + "); stop what uses it, or choose another with --listen HOST:PORT",
            failed);
      }
    }
    throw failed;
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.prefer405over404 = true;
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.http.maxRequestSize = RequestBody.MOST_BYTES;
    jetty(config);
    Passphrase passphrase = new Passphrase(settings.passphrase(), System::nanoTime);
    Guard guard = new Guard(new HostNames(settings.hostNames()), passphrase);
    config.routes.before(guard::check);
    new Routes(backend, live, passphrase).register(config);
    Problems.register(config);
    // without the WebSocket machinery that Javalin would load and nothing here speaks
    config.unsafe.servlet =
        LazyKt.lazyOf(new ServletEntry(null, new JavalinServlet(config.unsafe)));
  }

  private void jetty(JavalinConfig config) {
    QueuedThreadPool threads = new QueuedThreadPool(8, 2, IDLE_TIMEOUT_MS);
    threads.setName("web");
    threads.setStopTimeout(STOP_TIMEOUT_MS);
    threads.setReservedThreads(0);
    Server server = new Server(threads);
    server.setStopTimeout(0);
    server.setErrorHandler(new Problems.BeforeRouting());
    config.unsafe.jettyInternal.server = server;
    config.jetty.modifyHttpConfiguration(http -> http.setUriCompliance(UriCompliance.DEFAULT));
    config.jetty.addConnector(this::connector);
  }

  private ServerConnector connector(Server server, HttpConfiguration http) {
    ServerConnector connector = new ServerConnector(server, 0, 1, new HttpConnectionFactory(http));
    connector.setHost(settings.host());
    connector.setPort(settings.port());
    connector.setIdleTimeout(IDLE_TIMEOUT_MS);
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
    try {
      javalin.unsafe.jettyInternal.server.stop();
    } catch (Exception e) {
      LOG.warn("the web server did not stop in good order", e);
    }
  }
}
