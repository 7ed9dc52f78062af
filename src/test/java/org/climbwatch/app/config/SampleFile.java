package org.climbwatch.app.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What {@code config/climbwatch.toml} documents, commented out or not. */
final class SampleFile {
  static final Path PATH = Path.of("config/climbwatch.toml");

  private static final Pattern HEADER = Pattern.compile("(?:# )?\\[+([a-z_.]+)]+");
  private static final Pattern SETTING =
      Pattern.compile("(# )?([a-z_]+) = (\"[^\"]*\"|\\[]|[^\\s#\"]+)\\s*(?:# (.*))?");

  private SampleFile() {}

  /**
   * One documented key.
   *
   * @param offered commented out: what stands there is the default
   */
  record Setting(String table, String key, String value, boolean offered, String remark) {
    boolean isText() {
      return value.startsWith("\"");
    }

    @Override
    public String toString() {
      return table + "." + key;
    }
  }

  static List<Setting> settings() throws IOException {
    List<Setting> settings = new ArrayList<>();
    String table = "";
    for (String line : Files.readAllLines(PATH)) {
      Matcher header = HEADER.matcher(line);
      Matcher setting = SETTING.matcher(line);
      if (header.matches()) {
        table = header.group(1);
      } else if (setting.matches()) {
        String remark = setting.group(4) == null ? "" : setting.group(4);
        boolean offered = setting.group(1) != null;
        settings.add(new Setting(table, setting.group(2), setting.group(3), offered, remark));
      }
    }
    return settings;
  }

  static List<String> tables() throws IOException {
    return Files.readAllLines(PATH).stream()
        .map(HEADER::matcher)
        .filter(Matcher::matches)
        .map(header -> header.group(1))
        .toList();
  }
}
