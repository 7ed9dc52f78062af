package org.climbwatch.app;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** How the program was called, so that what it says can be typed as it stands. */
final class Called {
  /** What stands for it in the examples of the commands. */
  private static final String OWN_NAME = "climbwatch";

  private static final int WIDTH = 80;

  /** A shell takes the line on behind it. */
  private static final String GOES_ON = " \\";

  private Called() {}

  /** Such as {@code java -jar target/climbwatch.jar}. */
  static String name() {
    return name(System.getProperty("java.class.path", ""));
  }

  /**
   * @param classPath the jar alone, as it was written, when the program was called by it
   */
  static String name(String classPath) {
    // anything else would have to be quoted, or is no call by the jar
    boolean jar = classPath.matches("[\\w./-]+\\.jar");
    return "java -jar " + (jar ? classPath : "climbwatch.jar");
  }

  /** Puts the name into usage and examples of a program and its commands. */
  static void putInto(CommandSpec program) {
    program.name(name());
    examples(program);
    program.subcommands().values().forEach(command -> examples(command.getCommandSpec()));
  }

  private static void examples(CommandSpec command) {
    List<String> lines = new ArrayList<>();
    for (String line : command.usageMessage().footer()) {
      lines.addAll(example(line, name()));
    }
    command.usageMessage().footer(lines.toArray(String[]::new));
  }

  /** An example by that name, on as many lines as it needs, to be copied into a shell. */
  static List<String> example(String line, String name) {
    String start = "  " + OWN_NAME + " ";
    if (!line.startsWith(start)) {
      return List.of(line);
    }
    List<String> lines = new ArrayList<>();
    String current = "  " + name;
    for (String part : line.substring(start.length()).split(" (?=--)")) {
      if (current.length() + 1 + part.length() + GOES_ON.length() >= WIDTH) {
        lines.add(current + GOES_ON);
        current = "     " + part;
      } else {
        current += " " + part;
      }
    }
    lines.add(current);
    return lines;
  }
}
