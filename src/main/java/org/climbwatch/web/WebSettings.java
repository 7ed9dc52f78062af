package org.climbwatch.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where the server listens and whom it answers.
 *
 * @param host name or address to bind to
 * @param port 0 for any free one, else 1 to 65 535
 * @param passphrase that every change must carry; without one, only this machine may change
 *     anything
 * @param hostNames names beside {@code localhost} and plain addresses under which a browser may
 *     reach the server
 */
public record WebSettings(
    String host, int port, Optional<String> passphrase, List<String> hostNames) {
  /** Printable ASCII, as an HTTP header can carry it; anything shorter can be guessed in time. */
  private static final String PASSPHRASE = "[ -~]{8,200}";

  public WebSettings {
    if (host.isBlank()) {
      throw new IllegalArgumentException("host must not be blank");
    }
    if (port < 0 || port > 65_535) {
      throw new IllegalArgumentException("port must be 0 to 65535, was " + port);
    }
    if (passphrase.isPresent() && !passphrase.get().strip().matches(PASSPHRASE)) {
      throw new IllegalArgumentException(
          "passphrase must have 8 to 200 characters: plain letters, digits, signs and spaces");
    }
    passphrase = passphrase.map(String::strip);
    List<String> lowered = new ArrayList<>();
    for (String name : hostNames) {
      if (!name.matches("[A-Za-z0-9]([A-Za-z0-9.-]*[A-Za-z0-9])?")) {
        throw new IllegalArgumentException("\"" + name + "\" is not a host name");
      }
      lowered.add(name.toLowerCase(Locale.ROOT));
    }
    hostNames = List.copyOf(lowered);
  }

  /** Without the passphrase: settings are logged. */
  @Override
  public String toString() {
    return "WebSettings[" + host + ":" + port + ", names " + hostNames + "]";
  }
}
