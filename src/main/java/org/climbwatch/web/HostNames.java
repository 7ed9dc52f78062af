package org.climbwatch.web;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The names under which the server answers. A page of another site whose name has been pointed at
 * this machine (a rebound name) sends that other name and is turned down here.
 */
final class HostNames {
  private static final Pattern IPV4 =
      Pattern.compile("(25[0-5]|2[0-4]\\d|1?\\d?\\d)(\\.(25[0-5]|2[0-4]\\d|1?\\d?\\d)){3}");
  private static final Pattern IPV6 = Pattern.compile("\\[[0-9a-f:.]+]");
  private static final Pattern PORT = Pattern.compile(":\\d{1,5}$");

  private final List<String> configured;

  HostNames(List<String> configured) {
    this.configured = configured;
  }

  /** Whether a Host header's value is a plain address, {@code localhost} or a configured name. */
  boolean known(String hostHeader) {
    String host = PORT.matcher(hostHeader.toLowerCase(Locale.ROOT)).replaceFirst("");
    String name = host.endsWith(".") ? host.substring(0, host.length() - 1) : host;
    return name.equals("localhost")
        || IPV4.matcher(name).matches()
        || IPV6.matcher(name).matches()
        || configured.contains(name);
  }
}
