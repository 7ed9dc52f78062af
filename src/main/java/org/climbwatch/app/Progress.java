package org.climbwatch.app;

/** One line on a terminal that counts while long work goes on; nothing elsewhere. */
final class Progress implements AutoCloseable {
  private static final int MANY = 50_000;

  private final boolean shown = System.console() != null;
  private final String doing;
  private final String what;
  private final int every;
  private long count;

  Progress(String doing, String what) {
    this(doing, what, MANY);
  }

  /**
   * @param every how many make it worth a look
   */
  Progress(String doing, String what, int every) {
    this.doing = doing;
    this.what = what;
    this.every = every;
  }

  synchronized void one() {
    count++;
    if (shown && count % every == 0) {
      System.err.print("\r" + doing + " " + count + " " + what);
      System.err.flush();
    }
  }

  @Override
  public void close() {
    if (shown && count >= every) {
      System.err.println("\r" + doing + " " + count + " " + what);
    }
  }
}
