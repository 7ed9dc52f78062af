package org.climbwatch.app;

import org.climbwatch.app.config.SettingsText;
import org.climbwatch.journal.SettingsCodec;
import org.climbwatch.watch.WatchSettings;

/** Settings in the journal as lines of text. */
final class TextCodec implements SettingsCodec {
  @Override
  public String encode(WatchSettings settings) {
    return SettingsText.encode(settings);
  }

  @Override
  public WatchSettings decode(String text) {
    try {
      return SettingsText.decode(text);
    } catch (IllegalArgumentException unreadable) {
      throw new Refusal(
          "the journal cannot be gone on with: "
              + unreadable.getMessage()
              + "; use the version that wrote it, or another --data folder");
    }
  }
}
