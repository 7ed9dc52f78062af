package org.climbwatch.app;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.config.ListenAddress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** The daemon, until it is told to stop. */
@Command(
    name = "run",
    description = {
      "Watches the kiln, keeps the record and serves the page, until it is stopped"
          + " (Ctrl-C, SIGTERM).",
      "Without --config it plays a kiln model at 60 times real speed."
    },
    footerHeading = "%nExamples%n",
    footer = {
      "  climbwatch run",
      "  climbwatch run --config climbwatch.toml --data /var/lib/climbwatch"
    })
final class RunCommand implements Callable<Integer> {
  @ParentCommand private Main main;

  @Mixin private DataOption data = new DataOption();

  @Option(
      names = "--listen",
      paramLabel = "HOST:PORT",
      description = "Where to serve, in place of what the settings say.")
  private Optional<String> listen = Optional.empty();

  @Override
  public Integer call() throws IOException, InterruptedException {
    Configuration configuration = data.configuration();
    if (listen.isPresent()) {
      configuration = configuration.listeningAt(address(listen.get()));
    }
    if (!configuration.server().loopbackOnly() && configuration.server().passphrase().isEmpty()) {
      throw new Refusal(
          "--listen "
              + listen.orElse("")
              + ": others on the network could change things; set server.passphrase in the"
              + " settings, or listen on 127.0.0.1");
    }
    main.awaitLoaded();
    Daemon daemon = Daemon.start(configuration);
    main.started(daemon);
    System.out.println("ready " + daemon.address());
    System.out.flush();
    daemon.notifyService();
    new CountDownLatch(1).await();
    return Main.WELL;
  }

  private static ListenAddress address(String text) {
    try {
      return ListenAddress.of(text);
    } catch (IllegalArgumentException bad) {
      throw new Refusal("--listen " + bad.getMessage());
    }
  }
}
