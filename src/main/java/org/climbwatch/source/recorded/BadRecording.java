package org.climbwatch.source.recorded;

/** A recording that cannot be used; the message says where, what, and what is allowed. */
public final class BadRecording extends RuntimeException {
  private static final long serialVersionUID = 1;

  BadRecording(String where, String what) {
    super(where + ": " + what);
  }
}
