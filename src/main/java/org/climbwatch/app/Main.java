package org.climbwatch.app;

import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.climbwatch.app.config.ConfigurationProblem;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.source.recorded.BadRecording;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.MutuallyExclusiveArgsException;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command line. */
@Command(
    name = "climbwatch",
    description = {
      "Watches the climb of a gas-fired kiln: measures, records and warns.",
      "",
      "It is a warning aid and no safety device: it closes no valve, and a gas kiln is not left"
          + " alone. Local codes and licensed practice come first."
    },
    synopsisSubcommandLabel = "COMMAND",
    versionProvider = Version.class,
    footerHeading = "%nFirst steps%n",
    footer = {
      "  climbwatch run",
      "      the demo: a kiln model, sped up",
      "  climbwatch check --config FILE",
      "      is the probe well?",
      "  climbwatch COMMAND --help",
      "      more on one command",
      "",
      "Exit codes: 0 done, 1 the thing asked about is not well, 2 the command or its",
      "input is wrong, 70 internal fault."
    },
    subcommands = {
      RunCommand.class,
      CheckCommand.class,
      ConvertCommand.class,
      ReplayCommand.class,
      SimulateCommand.class,
      FiringsCommand.class,
      ExportCommand.class
    })
public final class Main implements Callable<Integer> {
  static final int WELL = 0;
  static final int NOT_WELL = 1;
  static final int WRONG = 2;
  static final int INTERNAL = 70;

  private static final Map<String, String> EXITS =
      new TreeMap<>(
          Map.of(
              "0", "done",
              "1", "the thing asked about is not well",
              "2", "the command or its input is wrong: one line says what to do",
              "70", "internal fault"));

  private final Optional<StartAhead> ahead;
  private final Optional<GoodEnd> end;

  @Spec private CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = CommandLine.ScopeType.INHERIT,
      description = "Show this help.")
  private boolean help;

  @Option(
      names = "--verbose",
      scope = CommandLine.ScopeType.INHERIT,
      description = "Tell all that is known of an internal fault.")
  private boolean verbose;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  private boolean version;

  private Main(Optional<StartAhead> ahead, Optional<GoodEnd> end) {
    this.ahead = ahead;
    this.end = end;
  }

  public static void main(String[] arguments) {
    boolean daemon = arguments.length > 0 && arguments[0].equals("run");
    System.setProperty("org.slf4j.simpleLogger.logFile", daemon ? "System.out" : "System.err");
    Optional<GoodEnd> end = daemon ? Optional.of(GoodEnd.begin()) : Optional.empty();
    Optional<StartAhead> ahead = daemon ? Optional.of(StartAhead.begin()) : Optional.empty();
    int exit = commandLine(ahead, end).execute(arguments);
    end.ifPresent(one -> one.leaves(exit));
    System.exit(exit);
  }

  static CommandLine commandLine() {
    return commandLine(Optional.empty(), Optional.empty());
  }

  private static CommandLine commandLine(Optional<StartAhead> ahead, Optional<GoodEnd> end) {
    CommandLine commands =
        new CommandLine(new Main(ahead, end))
            .setUsageHelpWidth(80)
            .setUsageHelpAutoWidth(false)
            .setParameterExceptionHandler(Main::wrongUse)
            .setExecutionExceptionHandler(Main::failed)
            .setExecutionStrategy(Main::executed);
    Called.putInto(commands.getCommandSpec());
    PlainNumbers.register(commands);
    for (CommandLine each : commands.getSubcommands().values()) {
      each.getCommandSpec()
          .usageMessage()
          .exitCodeListHeading("%nExit codes%n")
          .exitCodeList(EXITS);
    }
    return commands;
  }

  /** A result that could not be printed is none: to a full disk, say. */
  private static int executed(ParseResult parsed) {
    int exit = new CommandLine.RunLast().execute(parsed);
    boolean lost = System.out.checkError();
    for (ParseResult each = parsed; each != null; each = each.subcommand()) {
      lost |= each.commandSpec().commandLine().getOut().checkError();
    }
    if (lost) {
      parsed
          .commandSpec()
          .commandLine()
          .getErr()
          .println("cannot write to standard output; look for a full disk or a closed pipe");
      return WRONG;
    }
    return exit;
  }

  /** Comes back once what a daemon needs is loaded, if that was begun. */
  void awaitLoaded() throws InterruptedException {
    if (ahead.isPresent()) {
      ahead.get().await();
    }
  }

  /** A daemon runs, and has to be closed when the program is told to stop. */
  void started(Daemon daemon) {
    end.ifPresent(one -> one.started(daemon));
  }

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "a COMMAND is missing");
  }

  private static int wrongUse(ParameterException wrong, String[] arguments) {
    CommandLine command = wrong.getCommandLine();
    command
        .getErr()
        .println(
            what(wrong, command) + "; see " + command.getCommandSpec().qualifiedName() + " --help");
    return WRONG;
  }

  private static String what(ParameterException wrong, CommandLine command) {
    boolean atTheTop = command.getParent() == null;
    if (atTheTop && wrong instanceof UnmatchedArgumentException unmatched) {
      String word = unmatched.getUnmatched().get(0);
      return oneLine("\"" + word + "\" is no command; there are ")
          + String.join(", ", command.getSubcommands().keySet());
    }
    if (wrong instanceof MutuallyExclusiveArgsException) {
      return oneLine(wrong.getMessage())
          .replaceFirst("^Error: ", "")
          .replaceFirst(" are mutually exclusive.*", ": give one of them");
    }
    return oneLine(wrong.getMessage());
  }

  private static int failed(Exception failure, CommandLine command, ParseResult parsed) {
    if (failure instanceof Refusal
        || failure instanceof ConfigurationProblem
        || failure instanceof BadRecording
        || failure instanceof JournalTrouble) {
      command.getErr().println(failure.getMessage());
      return WRONG;
    }
    if (failure instanceof IOException) {
      command.getErr().println("cannot read or write: " + oneLine("" + failure.getMessage()));
      return WRONG;
    }
    Main main = (Main) command.getCommandSpec().root().userObject();
    command.getErr().println(internal(failure, main.verbose));
    if (main.verbose) {
      failure.printStackTrace(command.getErr());
    }
    return INTERNAL;
  }

  /** What, where in the program, and what to do. */
  private static String internal(Exception failure, boolean verbose) {
    String where =
        Arrays.stream(failure.getStackTrace())
            .filter(frame -> frame.getClassName().startsWith("org.climbwatch."))
            .findFirst()
            .map(frame -> " in " + frame.getFileName() + ":" + frame.getLineNumber())
            .orElse("");
    return oneLine("internal fault" + where + ": " + failure)
        + "; please report it"
        + (verbose ? ":" : ", with what the same command prints with --verbose");
  }

  private static String oneLine(String text) {
    return text.replace('\n', ' ').replace("\r", "");
  }
}
