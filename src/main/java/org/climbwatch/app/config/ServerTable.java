package org.climbwatch.app.config;

import java.util.List;
import java.util.Optional;
import org.climbwatch.web.WebSettings;

/** The keys of {@code [server]}. */
final class ServerTable {
  private static final ListenAddress USUAL = new ListenAddress("127.0.0.1", 8080);

  private final Section server;

  ServerTable(Section server) {
    this.server = server;
  }

  ServerSettings read() {
    ListenAddress address = address();
    Optional<String> passphrase = server.text("passphrase").filter(this::passphraseFits);
    List<String> hostNames = server.texts("host_names").stream().filter(this::nameFits).toList();
    if (!ServerSettings.isLoopback(address.host()) && !server.has("passphrase")) {
      server.wrong(
          "listen",
          server.text("listen").orElseThrow(),
          "would let others on the network change things",
          "set server.passphrase, or listen on 127.0.0.1:8080");
    }
    server.refuseTheRest();
    return new ServerSettings(address.host(), address.port(), passphrase, hostNames);
  }

  private ListenAddress address() {
    Optional<String> listen = server.text("listen");
    try {
      return listen.map(ListenAddress::of).orElse(USUAL);
    } catch (IllegalArgumentException bad) {
      server.wrong("listen", listen.orElse(""), "is no HOST:PORT", ListenAddress.ALLOWED);
      return USUAL;
    }
  }

  private boolean passphraseFits(String passphrase) {
    try {
      new WebSettings("localhost", 0, Optional.of(passphrase), List.of());
      return true;
    } catch (IllegalArgumentException refused) {
      server.wrong(
          "passphrase",
          passphrase,
          "does not fit",
          "allowed: 8 to 200 letters without accents, digits, signs and spaces");
      return false;
    }
  }

  private boolean nameFits(String name) {
    try {
      new WebSettings("localhost", 0, Optional.empty(), List.of(name));
      return true;
    } catch (IllegalArgumentException refused) {
      server.wrong("host_names", name, "is no host name", "write for example \"kiln.local\"");
      return false;
    }
  }
}
