package org.climbwatch.app;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.climbwatch.journal.RecordedDeed;

/** What the CSV's note and probe say of a deed, so that a replay does it again. */
final class DeedNote {
  /** An occurrence: the kind's word, the boot and the moment of its raising, perhaps the probe. */
  private static final Pattern OCCURRENCE = Pattern.compile("([a-z_]+)-\\d+-\\d+(?:-(.*))?");

  /** Whichever occurrence stands. */
  private static final Pattern KIND = Pattern.compile("([a-z_]+)(?:-(.*))?");

  private DeedNote() {}

  static String of(RecordedDeed deed) {
    return switch (deed.action()) {
      case "began" -> deed.subject();
      case "acknowledged", "unshelved", "reset" -> named(deed, 1) + ": " + deed.text();
      case "shelved" -> named(deed, 1) + " for " + deed.text();
      case "reported" -> deed.subject() + ": " + deed.text();
      case "resumed" -> restart(deed.text());
      case "noted", "remarked" -> deed.text();
      default -> "";
    };
  }

  private static String restart(String text) {
    return text.isEmpty() || text.equals(RecordedDeed.SAME_BOOT) ? text : "away " + text;
  }

  /** The probe of an alarm's deed; blank for the followed one and for all else. */
  static String probe(RecordedDeed deed) {
    return switch (deed.action()) {
      case "acknowledged", "shelved", "unshelved", "reset" -> named(deed, 2);
      default -> "";
    };
  }

  /** Occurrences are numbered anew in a replay, so the kind names the alarm. */
  private static String named(RecordedDeed deed, int group) {
    Matcher occurrence = OCCURRENCE.matcher(deed.subject());
    Matcher name = occurrence.matches() ? occurrence : KIND.matcher(deed.subject());
    boolean known = occurrence.matches() || name.matches();
    String found = known ? name.group(group) : group == 1 ? deed.subject() : "";
    return found == null ? "" : found;
  }
}
