package org.climbwatch.app.config;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.climbwatch.web.WebSettings;

/** The keys of {@code [server]}. */
final class ServerTable {
  private static final ListenAddress USUAL = new ListenAddress("127.0.0.1", 8080);

  private static final String ALLOWED =
      "allowed: 8 to 200 letters without accents, digits, signs and spaces";

  private final Section server;

  ServerTable(Section server) {
    this.server = server;
  }

  ServerSettings read() {
    ListenAddress address = address();
    Optional<String> passphrase = passphrase();
    List<String> hostNames = server.texts("host_names").stream().filter(this::nameFits).toList();
    if (!ServerSettings.isLoopback(address.host())
        && !server.has("passphrase")
        && !server.has("passphrase_file")) {
      server.wrong(
          "listen",
          server.text("listen").orElseThrow(),
          "would let others on the network change things",
          "set server.passphrase or server.passphrase_file, or listen on 127.0.0.1:8080");
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

  private Optional<String> passphrase() {
    Optional<String> written = server.text("passphrase");
    Optional<Path> file = server.path("passphrase_file");
    if (server.has("passphrase") && server.has("passphrase_file")) {
      server.mistake("passphrase_file", "stands beside passphrase; keep one of the two");
      return Optional.empty();
    }
    if (written.isPresent() && !fits(written.get())) {
      server.wrong("passphrase", written.get(), "does not fit", ALLOWED);
    }
    return written.or(() -> file.flatMap(this::inFile)).filter(ServerTable::fits);
  }

  /** The file's one line; what it says is shown to nobody. */
  private Optional<String> inFile(Path file) {
    try {
      List<String> lines = Files.readAllLines(file);
      if (lines.size() == 1 && fits(lines.get(0))) {
        return Optional.of(lines.get(0));
      }
      fileMistake(file, "does not hold one line with a passphrase that fits; " + ALLOWED);
    } catch (NoSuchFileException missing) {
      fileMistake(file, "is no such file; write the passphrase into it, one line");
    } catch (AccessDeniedException denied) {
      fileMistake(file, "may not be read by this user; look at its owner and mode (ls -l)");
    } catch (CharacterCodingException notText) {
      fileMistake(file, "is not a UTF-8 text; " + ALLOWED);
    } catch (IOException unreadable) {
      fileMistake(file, "cannot be read: " + unreadable.getMessage());
    }
    return Optional.empty();
  }

  private void fileMistake(Path file, String what) {
    server.mistake("passphrase_file", "= \"" + file + "\" " + what);
  }

  private static boolean fits(String passphrase) {
    try {
      new WebSettings("localhost", 0, Optional.of(passphrase), List.of());
      return true;
    } catch (IllegalArgumentException refused) {
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
