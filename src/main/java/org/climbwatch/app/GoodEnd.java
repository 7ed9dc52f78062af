package org.climbwatch.app;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Leaves well when told to stop (Ctrl-C, SIGTERM), at whatever moment of the start. Being told to
 * stop is no failure, but Java would leave with 128 + the signal's number.
 */
final class GoodEnd {
  /** s that a start is given to come to where it can be stopped; a busy machine takes many. */
  private static final long START_S = 60;

  private final CompletableFuture<Optional<Daemon>> started = new CompletableFuture<>();
  private volatile int exit = Main.WELL;

  private GoodEnd() {}

  /** From now on. */
  static GoodEnd begin() {
    GoodEnd end = new GoodEnd();
    Runtime.getRuntime().addShutdownHook(new Thread(end::stop, "stop"));
    return end;
  }

  /** What has to be closed. */
  void started(Daemon daemon) {
    started.complete(Optional.of(daemon));
  }

  /** There is nothing to close: the command has ended by itself. */
  void leaves(int exitCode) {
    exit = exitCode;
    started.complete(Optional.empty());
  }

  private void stop() {
    try {
      started.get(START_S, TimeUnit.SECONDS).ifPresent(Daemon::close);
    } catch (InterruptedException | ExecutionException | TimeoutException stuck) {
      System.err.println("stopped in the middle of the start");
    }
    System.out.flush();
    System.err.flush();
    Runtime.getRuntime().halt(exit);
  }
}
