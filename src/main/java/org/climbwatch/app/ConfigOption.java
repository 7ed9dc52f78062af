package org.climbwatch.app;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import picocli.CommandLine.Option;

/** {@code --config}: which settings. */
final class ConfigOption {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Settings (TOML). Without it: the demo, a kiln model.")
  private Optional<Path> file = Optional.empty();

  /** Checked as a whole. */
  Configuration load() throws IOException {
    if (file.isPresent()) {
      return Configuration.load(file.get());
    }
    try (InputStream demo = Configuration.class.getResourceAsStream("demo.toml")) {
      return Configuration.ofText(
          "demo.toml", new String(demo.readAllBytes(), StandardCharsets.UTF_8));
    }
  }
}
