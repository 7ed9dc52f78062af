package org.climbwatch.app.config;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.climbwatch.watch.WatchSettings;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;

/**
 * All settings of one run, checked.
 *
 * @param sources where the readings of each of the watch's probes come from, in the same order
 * @param fitted when each of them was put in, where that is said, in the same order
 * @param interval between two kept readings, in kiln time
 * @param burst whether a reading is made of all looks that the device can give in that time
 * @param dataDirectory where the journal lies
 */
public record Configuration(
    WatchSettings watch,
    List<ProbeSource> sources,
    List<Optional<LocalDate>> fitted,
    Duration interval,
    boolean burst,
    ServerSettings server,
    Path dataDirectory) {
  /** Some editors put it first; TOML has no place for it. */
  private static final String BYTE_ORDER_MARK = "\ufeff";

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
      throw new ConfigurationProblem(List.of(file + ": " + reason(file, unreadable)));
    }
  }

  private static String reason(Path file, IOException unreadable) {
    if (unreadable instanceof CharacterCodingException) {
      return "not a UTF-8 text; save it as UTF-8";
    }
    if (Files.isDirectory(file)) {
      return "a folder; name the file in it";
    }
    return unreadable instanceof AccessDeniedException
        ? "this user may not read it; look at its owner and mode (ls -l)"
        : "cannot be read: " + unreadable.getMessage();
  }

  /**
   * Reads a text.
   *
   * @param name how messages call it
   * @throws ConfigurationProblem with all mistakes
   */
  public static Configuration ofText(String name, String text) {
    Mistakes mistakes = new Mistakes(name);
    TomlParseResult toml = Toml.parse(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
    if (toml.hasErrors()) {
      SyntaxMistake syntax = new SyntaxMistake(text);
      toml.errors().stream()
          .map(error -> error.position().line())
          .distinct()
          .forEach(line -> mistakes.add(line, syntax.message(line)));
    }
    mistakes.throwIfAny();
    Configuration configuration = new ConfigurationReader(toml, mistakes).read();
    mistakes.throwIfAny();
    return configuration;
  }

  public Configuration {
    sources = List.copyOf(sources);
    fitted = List.copyOf(fitted);
    if (sources.size() != watch.probes().size()) {
      throw new IllegalArgumentException("each probe needs one source");
    }
  }

  /** That of the followed probe. */
  public ProbeSource source() {
    return sources.get(0);
  }

  /** How many times faster than real time kiln time runs; the same for all probes. */
  public double speed() {
    return source().speed();
  }

  /** The same with another server address. */
  public Configuration listeningAt(ListenAddress address) {
    return new Configuration(
        watch, sources, fitted, interval, burst, server.at(address), dataDirectory);
  }

  /** The same with other settings of the core for the same probes. */
  public Configuration with(WatchSettings other) {
    return new Configuration(other, sources, fitted, interval, burst, server, dataDirectory);
  }

  /** The same with its journal elsewhere. */
  public Configuration withData(Path directory) {
    return new Configuration(watch, sources, fitted, interval, burst, server, directory);
  }
}
