package org.climbwatch.web;

import jakarta.servlet.ServletRequest;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;

/** Ends a connection for good. */
final class Connections {
  private Connections() {}

  /**
   * Closes the socket under a request, so that a half-sent answer cannot pass for a whole one and
   * no unread byte is waited for.
   */
  static void cut(ServletRequest request) {
    ServletContextRequest.getServletContextRequest(request)
        .getConnectionMetaData()
        .getConnection()
        .getEndPoint()
        .close();
  }
}
