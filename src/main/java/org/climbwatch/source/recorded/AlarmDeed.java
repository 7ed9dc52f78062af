package org.climbwatch.source.recorded;

import java.time.Duration;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/**
 * What the potter did about an alarm, as the note of its row tells: {@code climb_stalled: Ann}, or
 * {@code climb_stalled for 1800 s: Ann}, with a note of theirs on the lines below. Complaints are
 * without the place.
 *
 * @param alarm the kind's word, with the probe's name behind a dash where the row names one
 * @param time for how long it is shelved; blank for the other deeds
 * @param by who, and their note below
 */
record AlarmDeed(String alarm, String time, String by) {
  private static final String FOR = " for ";

  /**
   * @param probe of the row; blank for the followed one
   */
  static AlarmDeed of(String note, String probe) {
    int colon = note.indexOf(':');
    String head = colon < 0 ? note : note.substring(0, colon);
    int time = head.indexOf(FOR);
    String kind = (time < 0 ? head : head.substring(0, time)).strip();
    return new AlarmDeed(
        probe.isEmpty() ? kind : kind + "-" + probe,
        time < 0 ? "" : head.substring(time + FOR.length()).strip(),
        colon < 0 ? "" : note.substring(colon + 1));
  }

  Input input(String action, Moment at) {
    Signature signature = Signature.ofText(by);
    return switch (action) {
      case "acknowledged" -> new Input.Acknowledged(at, alarm, signature);
      case "shelved" -> new Input.Shelved(at, alarm, shelving());
      case "unshelved" -> new Input.Unshelved(at, alarm, signature);
      default -> new Input.Reset(at, alarm, signature);
    };
  }

  private Shelving shelving() {
    try {
      return Shelving.ofText(time + ":" + by);
    } catch (IllegalArgumentException wrong) {
      throw new BadRecording(
          "the note of shelved must be as \"climb_stalled for 1800 s: Ann\", with "
              + Shelving.SHORTEST.toSeconds()
              + " to "
              + Shelving.LONGEST.toSeconds()
              + " s");
    }
  }

  /** The note of {@code resumed} where the machine had stayed on. */
  static final String SAME_BOOT = "same boot";

  /**
   * How long the machine was off, of the note of {@code resumed}: {@code away 95 s}, {@link
   * #SAME_BOOT}, or blank where nobody knows.
   */
  static Duration away(String note) {
    if (note.isBlank() || note.equals(SAME_BOOT)) {
      return Duration.ZERO;
    }
    if (!note.matches("away \\d{1,10} s")) {
      throw new BadRecording(
          "the note of resumed must be as \"away 95 s\", \"same boot\", or empty");
    }
    return Duration.ofSeconds(Long.parseLong(note.substring(5, note.length() - 2)));
  }
}
