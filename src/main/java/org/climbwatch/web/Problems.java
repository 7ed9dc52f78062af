package org.climbwatch.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Turns whatever is thrown into a problem document; what is ours goes to the log, not out. */
final class Problems {
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);
  private static final String OURS = "Internal fault";
  private static final String SEE_LOG = "The fault is ours; the daemon's log says more.";

  private Problems() {}

  static void register(JavalinConfig config) {
    config.routes.exception(
        Refused.class, (e, context) -> answer(context, e.status(), e.title(), e.detail()));
    config.routes.exception(HttpResponseException.class, Problems::refusedByRouter);
    config.routes.exception(
        Exception.class,
        (e, context) -> {
          LOG.error("{} {} failed", context.method(), context.path(), e);
          answer(context, 500, OURS, SEE_LOG);
        });
    config.router.javaLangErrorHandler(Problems::grave);
  }

  private static void refusedByRouter(HttpResponseException e, Context context) {
    String allowed = e.getDetails().get("availableMethods");
    if (allowed == null) {
      allowed = e.getDetails().get("Available methods");
    }
    if (e.getStatus() == 405 && allowed != null) {
      context.header("Allow", allowed);
      answer(
          context, 405, "Method not allowed", "This address takes " + allowed + " requests only.");
    } else if (e.getStatus() == 404) {
      answer(context, 404, "No such address", "Nothing is served at " + context.path() + ".");
    } else {
      answer(context, e.getStatus(), HttpStatus.getMessage(e.getStatus()), e.getMessage());
    }
  }

  private static void answer(Context context, int status, String title, String detail) {
    if (context.res().isCommitted()) {
      Connections.cut(context.req());
      return;
    }
    context.res().resetBuffer();
    if (status == 401) {
      context.header("WWW-Authenticate", "Bearer realm=\"Climbwatch\"");
    }
    context.removeHeader("Content-Disposition");
    context.header("Cache-Control", "no-store");
    context.status(status);
    context.result(new Problem(status, title, detail, context.path()).bytes());
    context.contentType(Problem.TYPE);
  }

  /** An Error (for instance: out of memory) that reached the server. */
  private static void grave(HttpServletResponse response, Error error) {
    LOG.error("request failed", error);
    if (response.isCommitted()) {
      return;
    }
    response.setContentType(Problem.TYPE);
    try {
      response.getOutputStream().write(new Problem(500, OURS, SEE_LOG, "").bytes());
    } catch (IOException gone) {
      LOG.debug("nobody waits for the answer", gone);
    }
  }

  /** For requests that Jetty turns down before they reach a route: bad syntax, huge headers. */
  static final class BeforeRouting extends ErrorHandler {
    @Override
    public boolean handle(Request request, Response response, Callback callback) {
      int status = response.getStatus() >= 400 ? response.getStatus() : 400;
      String title = HttpStatus.getMessage(status);
      response.setStatus(status);
      SecurityHeaders.forEach((name, value) -> response.getHeaders().put(name, value));
      response.getHeaders().put(HttpHeader.CONTENT_TYPE, Problem.TYPE);
      response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
      // Jetty has no trustworthy path here: it may be what was wrong
      byte[] body = new Problem(status, title, "The request is not valid HTTP here.", "").bytes();
      response.write(true, ByteBuffer.wrap(body), callback);
      return true;
    }
  }
}
