package org.climbwatch.app;

/** One line on a terminal that counts while long work goes on; nothing elsewhere. */
final class Progress implements AutoCloseable {
  private static final int EVERY = 50_000;

  private final boolean shown = System.console() != null;
  private final String doing;
  private final String what;
  private long count;

  Progress(String doing, String what) {
    this.doing = doing;
    this.what = what;
  }

  void one() {
    count++;
    if (shown && count % EVERY == 0) {
      System.err.print("\r" + doing + " " + count + " " + what);
      System.err.flush();
    }
  }

  @Override
  public void close() {
    if (shown && count >= EVERY) {
      System.err.println("\r" + doing + " " + count + " " + what);
    }
  }
}
