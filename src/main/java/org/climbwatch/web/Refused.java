package org.climbwatch.web;

/** A request that cannot be met because of what was asked; the person can put it right. */
public final class Refused extends RuntimeException {
  private final int status;
  private final String title;

  /**
   * @param status HTTP status, 400 to 499, or 503
   * @param title a few words, the same for every occurrence
   * @param detail what, where, and what to do
   */
  public Refused(int status, String title, String detail) {
    super(detail);
    this.status = status;
    this.title = title;
  }

  /** The HTTP status. */
  public int status() {
    return status;
  }

  /** A few words, the same for every occurrence. */
  public String title() {
    return title;
  }

  /** What, where, and what to do. */
  public String detail() {
    return getMessage();
  }

  static Refused noFiring(String id) {
    return new Refused(
        404, "No such firing", "There is no firing " + id + "; GET /api/v1/firings lists them.");
  }

  public static Refused badRequest(String detail) {
    return new Refused(400, "Request cannot be understood", detail);
  }
}
