package org.climbwatch.web;

import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;

/**
 * Turns down what must not reach a route.
 *
 * <p>A change must come from our own page or from a program: a browser names the site that a
 * request comes from ({@code Origin}, {@code Sec-Fetch-Site}), and it may send another site's
 * {@code application/json} only after asking, which is never granted.
 */
final class Guard {
  private static final List<String> READING_METHODS = List.of("GET", "HEAD");
  private static final List<String> OWN_SITE = List.of("same-origin", "none");

  private final HostNames hostNames;
  private final Passphrase passphrase;

  Guard(HostNames hostNames, Passphrase passphrase) {
    this.hostNames = hostNames;
    this.passphrase = passphrase;
  }

  /**
   * @throws Refused with the reason
   */
  void check(Context context) {
    SecurityHeaders.forEach(context::header);
    context.header("Cache-Control", "no-store");
    checkHost(context);
    if (context.header("X-HTTP-Method-Override") != null) {
      throw Refused.badRequest("The method cannot be overridden; send the one that is meant.");
    }
    if (!READING_METHODS.contains(context.req().getMethod())) {
      checkChange(context);
    }
  }

  private void checkHost(Context context) {
    String host = context.header("Host");
    if (host == null || !hostNames.known(host)) {
      throw new Refused(
          421,
          "Host name not known here",
          "Use this machine's address or localhost, or add the name to host_names in the"
              + " configuration.");
    }
  }

  private void checkChange(Context context) {
    checkSite(context);
    if (!context.req().getMethod().equals("POST")) {
      return; // nothing takes it: the router says so
    }
    String type = context.contentType();
    if (type == null || !type.split(";", 2)[0].strip().equalsIgnoreCase(Json.TYPE)) {
      throw new Refused(
          415,
          "Content type not taken",
          "Send Content-Type: application/json, also without a body.");
    }
    if (!passphrase.needed() && !loopback(context)) {
      throw new Refused(
          403,
          "Changes from this machine only",
          "No passphrase is configured, so other machines may look but change nothing.");
    }
    passphrase.check(context.req().getRemoteAddr(), context.header("Authorization"));
  }

  private static void checkSite(Context context) {
    String site = context.header("Sec-Fetch-Site");
    String origin = context.header("Origin");
    boolean foreign = site != null && !OWN_SITE.contains(site.toLowerCase(Locale.ROOT));
    if (foreign || (origin != null && !sameAuthority(origin, context.header("Host")))) {
      throw new Refused(
          403, "Other sites may change nothing", "The request comes from another site's page.");
    }
  }

  private static boolean sameAuthority(String origin, String host) {
    return origin.equalsIgnoreCase("http://" + host) || origin.equalsIgnoreCase("https://" + host);
  }

  private static boolean loopback(Context context) {
    try {
      // the address is a literal, so nothing is looked up
      return InetAddress.getByName(context.req().getRemoteAddr()).isLoopbackAddress();
    } catch (UnknownHostException notAnAddress) {
      return false;
    }
  }
}
