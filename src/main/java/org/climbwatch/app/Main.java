package org.climbwatch.app;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.climbwatch.app.config.ConfigurationProblem;
import org.climbwatch.journal.JournalTrouble;
import org.climbwatch.source.recorded.BadRecording;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;

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
      "  climbwatch run                         the demo: a kiln model, sped up",
      "  climbwatch check --config FILE         is the probe well?",
      "  climbwatch COMMAND --help              more on one command",
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

  @Spec private CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = CommandLine.ScopeType.INHERIT,
      description = "Show this help.")
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  private boolean version;

  public static void main(String[] arguments) {
    System.setProperty(
        "org.slf4j.simpleLogger.logFile",
        arguments.length > 0 && arguments[0].equals("run") ? "System.out" : "System.err");
    System.exit(commandLine().execute(arguments));
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setUsageHelpWidth(80)
        .setUsageHelpAutoWidth(false)
        .setParameterExceptionHandler(Main::wrongUse)
        .setExecutionExceptionHandler(Main::failed);
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
            oneLine(wrong.getMessage())
                + "; see "
                + command.getCommandSpec().qualifiedName()
                + " --help");
    return WRONG;
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
    command.getErr().println("internal fault, please report it: " + failure);
    failure.printStackTrace(command.getErr());
    return INTERNAL;
  }

  private static String oneLine(String text) {
    return text.replace('\n', ' ').replace("\r", "");
  }
}
