package org.climbwatch.source.recorded;

/** A recording that cannot be used; the message says where, what, and what to do. */
public final class BadRecording extends RuntimeException {
  private static final long serialVersionUID = 1;

  BadRecording(String what) {
    super(what);
  }

  BadRecording(String where, String what) {
    super(where + ": " + what);
  }
}
