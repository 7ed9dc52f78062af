package org.climbwatch.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code --data}: where the journal lies, else where the configuration says. */
final class DataOption {
  private static final String JOURNAL = "journal.sqlite";

  @Mixin private ConfigOption config = new ConfigOption();

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Folder of the journal. Without it: the one in the settings.")
  private Optional<Path> directory = Optional.empty();

  Configuration configuration() throws java.io.IOException {
    Configuration configuration = config.load();
    return directory.map(DataOption::folder).map(configuration::withData).orElse(configuration);
  }

  /** Without reading a configuration where {@code --data} names the folder. */
  Path journal() throws java.io.IOException {
    return journalIn(
        directory.isPresent() ? folder(directory.get()) : config.load().dataDirectory());
  }

  private static Path folder(Path named) {
    if (named.toString().isBlank()) {
      throw new Refusal("--data is empty; name a folder, or leave it out");
    }
    if (Files.exists(named) && !Files.isDirectory(named)) {
      throw new Refusal("--data " + named + " is no folder; name the one of the journal");
    }
    return named;
  }

  static Path journalIn(Path directory) {
    return directory.resolve(JOURNAL);
  }
}
