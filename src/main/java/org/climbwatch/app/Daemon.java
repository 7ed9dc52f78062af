package org.climbwatch.app;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.config.ServerSettings;
import org.climbwatch.journal.Journal;
import org.climbwatch.web.ListenSocket;
import org.climbwatch.web.WebServer;
import org.climbwatch.web.WebSettings;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** All parts of a running daemon: started together, stopped together. */
final class Daemon implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);

  private final Engine engine;
  private final Desk desk;
  private final WebServer web;
  private final String address;
  private final ServiceNotifier service;

  private Daemon(Engine engine, Desk desk, WebServer web, String address) {
    this.engine = engine;
    this.desk = desk;
    this.web = web;
    this.address = address;
    service = new ServiceNotifier(System.getenv(), engine::alive);
  }

  /**
   * Starts all parts.
   *
   * @throws Refusal when the address cannot be had; nothing has been written then
   */
  static Daemon start(Configuration configuration) throws IOException {
    WebSettings page = webSettings(configuration.server());
    ListenSocket socket;
    try {
      socket = ListenSocket.open(page);
    } catch (IOException taken) {
      throw new Refusal(taken.getMessage());
    }
    try {
      Sources.refuseUnplayable(configuration);
      return start(configuration, page, socket);
    } catch (IOException | RuntimeException failed) {
      socket.close();
      throw failed;
    }
  }

  private static Daemon start(Configuration configuration, WebSettings page, ListenSocket socket)
      throws IOException {
    Path file = DataOption.journalIn(configuration.dataDirectory());
    Journal journal = Journal.open(file, new TextCodec());
    Engine engine;
    try {
      engine = new Engine(configuration, new KilnTime(configuration.speed()), journal);
    } catch (RuntimeException failed) {
      journal.close();
      throw failed;
    }
    try {
      Desk desk = new Desk(engine, file);
      WebServer web = new WebServer(page, desk);
      int port = web.start(socket);
      engine.start();
      engine.sourceLines().forEach(line -> LOG.info("reads {}", line));
      LOG.info("keeps {}", file);
      return new Daemon(
          engine, desk, web, "http://" + inUrl(configuration.server().host()) + ":" + port + "/");
    } catch (IOException | RuntimeException failed) {
      engine.close();
      throw failed;
    }
  }

  /** The page's address. */
  String address() {
    return address;
  }

  /** Tells the service manager, if one asked to be told, that all is up, and goes on telling. */
  void notifyService() {
    service.ready("serves " + address);
  }

  @Override
  public void close() {
    service.close();
    web.close();
    desk.close();
    try {
      engine.close();
    } catch (RuntimeException lost) {
      LOG.error("{}", lost.getMessage());
    }
  }

  private static WebSettings webSettings(ServerSettings server) {
    return new WebSettings(server.host(), server.port(), server.passphrase(), names(server));
  }

  /** The configured names, and those by which the local network finds this machine. */
  private static List<String> names(ServerSettings server) {
    List<String> names = new ArrayList<>(server.hostNames());
    if (!server.loopbackOnly()) {
      try {
        String own = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
        names.add(own);
        names.add(own + ".local");
      } catch (UnknownHostException nameless) {
        LOG.info("this machine has no name; the page answers to its address");
      }
    }
    return names;
  }

  private static String inUrl(String host) {
    return host.contains(":") ? "[" + host + "]" : host;
  }
}
