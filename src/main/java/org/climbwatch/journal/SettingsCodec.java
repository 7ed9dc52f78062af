package org.climbwatch.journal;

import org.climbwatch.watch.WatchSettings;

/** How the settings in force are written into the journal as text, and read back. */
public interface SettingsCodec {
  /** One text from which {@link #decode} makes an equal value. */
  String encode(WatchSettings settings);

  /**
   * The settings of a text that this or an earlier version has encoded.
   *
   * @throws IllegalArgumentException when the text is no such settings
   */
  WatchSettings decode(String text);
}
