package org.climbwatch.app.config;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What is served, and to whom.
 *
 * @param passphrase that any change over the network needs
 * @param hostNames by which the page may be called besides addresses and localhost
 */
public record ServerSettings(
    String host, int port, Optional<String> passphrase, List<String> hostNames) {
  /** Digits only: 127.example.org is a name, and may be anywhere. */
  private static final Pattern LOOPBACK = Pattern.compile("127(\\.\\d{1,3}){3}");

  /** Whether only this machine can reach it. */
  public boolean loopbackOnly() {
    return isLoopback(host);
  }

  static boolean isLoopback(String host) {
    return host.equals("localhost") || host.equals("::1") || LOOPBACK.matcher(host).matches();
  }

  /** The same on another address, for the command line's {@code --listen}. */
  public ServerSettings at(ListenAddress address) {
    return new ServerSettings(address.host(), address.port(), passphrase, hostNames);
  }

  @Override
  public String toString() {
    return "ServerSettings[" + host + ":" + port + "]";
  }
}
