package org.climbwatch.app;

import java.util.ArrayList;
import java.util.List;
import org.climbwatch.journal.Journal;
import org.climbwatch.web.WebServer;
import org.slf4j.LoggerFactory;

/**
 * Loads the slowest libraries, database and web server, while command line and settings are read: a
 * machine with several cores is up in half the time.
 */
final class StartAhead {
  private final List<Thread> threads = new ArrayList<>();

  private StartAhead() {}

  /** Begins to load. */
  static StartAhead begin() {
    // made once and here: two threads that both made the first logger would be warned of
    LoggerFactory.getILoggerFactory();
    StartAhead ahead = new StartAhead();
    ahead.run("load-database", Journal::prepare);
    ahead.run("load-web", WebServer::prepare);
    return ahead;
  }

  private void run(String name, Runnable load) {
    Thread thread = new Thread(load, name);
    thread.setDaemon(true);
    thread.start();
    threads.add(thread);
  }

  /** Waits until all is loaded: the same classes made by two threads at once could lock up. */
  void await() throws InterruptedException {
    for (Thread thread : threads) {
      thread.join();
    }
  }
}
