package org.climbwatch.alarm;

/**
 * Who did something about an alarm, and what they noted.
 *
 * @param who on one line; may be blank
 * @param note may be blank
 */
public record Signature(String who, String note) {
  public static final Signature NOBODY = new Signature("", "");

  /** Line breaks in {@code who} become spaces; blanks around both are dropped. */
  public Signature {
    who = who.replace('\n', ' ').replace('\r', ' ').strip();
    note = note.strip();
  }

  /** One text from which {@link #ofText} makes an equal value: the name, then the note below. */
  public String text() {
    return note.isEmpty() ? who : who + "\n" + note;
  }

  public static Signature ofText(String text) {
    int end = text.indexOf('\n');
    return end < 0
        ? new Signature(text, "")
        : new Signature(text.substring(0, end), text.substring(end + 1));
  }
}
