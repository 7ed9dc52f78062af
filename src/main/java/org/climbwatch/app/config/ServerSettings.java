package org.climbwatch.app.config;

import java.util.List;
import java.util.Optional;

/**
 * What is served, and to whom.
 *
 * @param passphrase that any change over the network needs
 * @param hostNames by which the page may be called besides addresses and localhost
 */
public record ServerSettings(
    String host, int port, Optional<String> passphrase, List<String> hostNames) {
  /** Whether only this machine can reach it. */
  public boolean loopbackOnly() {
    return isLoopback(host);
  }

  static boolean isLoopback(String host) {
    return host.equals("localhost") || host.equals("::1") || host.startsWith("127.");
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
