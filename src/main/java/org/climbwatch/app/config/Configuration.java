package org.climbwatch.app.config;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.climbwatch.watch.WatchSettings;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/**
 * All settings of one run, checked.
 *
 * @param interval between two kept readings, in kiln time
 * @param dataDirectory where the journal lies
 */
public record Configuration(
    WatchSettings watch,
    ProbeSource source,
    Duration interval,
    ServerSettings server,
    Path dataDirectory) {

  /**
   * Reads a file.
   *
   * @throws ConfigurationProblem with all mistakes
   */
  public static Configuration load(Path file) {
    try {
      return ofText(file.toString(), Files.readString(file, StandardCharsets.UTF_8));
    } catch (NoSuchFileException missing) {
      throw new ConfigurationProblem(
          List.of(file + ": no such file; copy config/climbwatch.toml there, or name another"));
    } catch (IOException unreadable) {
      throw new ConfigurationProblem(
          List.of(file + ": cannot be read: " + unreadable.getMessage()));
    }
  }

  /**
   * Reads a text.
   *
   * @param name how messages call it
   * @throws ConfigurationProblem with all mistakes
   */
  public static Configuration ofText(String name, String text) {
    Mistakes mistakes = new Mistakes(name);
    TomlParseResult toml = Toml.parse(text);
    for (TomlParseError error : toml.errors()) {
      mistakes.add(error.position().line(), "not TOML: " + error.getMessage());
    }
    mistakes.throwIfAny();
    Configuration configuration = new ConfigurationReader(toml, mistakes).read();
    mistakes.throwIfAny();
    return configuration;
  }

  /** The same with another server address. */
  public Configuration listeningAt(ListenAddress address) {
    return new Configuration(watch, source, interval, server.at(address), dataDirectory);
  }

  /** The same with its journal elsewhere. */
  public Configuration withData(Path directory) {
    return new Configuration(watch, source, interval, server, directory);
  }
}
