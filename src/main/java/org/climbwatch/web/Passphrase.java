package org.climbwatch.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Whether a change may be made. Wrong guesses from one address cost it a wait that doubles, so that
 * trying a word list takes years; other addresses are served as before.
 */
final class Passphrase {
  private static final int FREE_GUESSES = 3;
  private static final int LONGEST_WAIT_S = 60;
  private static final int MOST_ADDRESSES = 256;

  private record Guesses(int wrong, long notBeforeNanos) {}

  private final Optional<String> passphrase;
  private final LongSupplier nanoTime;
  private final Map<String, Guesses> byAddress =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Guesses> eldest) {
          return size() > MOST_ADDRESSES;
        }
      };

  Passphrase(Optional<String> passphrase, LongSupplier nanoTime) {
    this.passphrase = passphrase;
    this.nanoTime = nanoTime;
  }

  boolean needed() {
    return passphrase.isPresent();
  }

  /**
   * Passes a change that carries the passphrase.
   *
   * @param authorization the header's value, or null
   * @throws Refused 401 without the right passphrase, 429 while an address must wait
   */
  synchronized void check(String address, String authorization) {
    if (passphrase.isEmpty()) {
      return;
    }
    if (authorization == null) {
      throw wrong("This change needs the configured passphrase: Authorization: Bearer ...");
    }
    Guesses before = byAddress.getOrDefault(address, new Guesses(0, nanoTime.getAsLong()));
    long waitNanos = before.notBeforeNanos - nanoTime.getAsLong();
    if (waitNanos > 0) {
      throw new Refused(
          429,
          "Too many wrong passphrases",
          "Try again in " + (waitNanos / 1_000_000_000 + 1) + " s.");
    }
    if (matches(authorization)) {
      byAddress.remove(address);
      return;
    }
    int wrong = before.wrong + 1;
    int waitS = wrong < FREE_GUESSES ? 0 : Math.min(LONGEST_WAIT_S, 1 << (wrong - FREE_GUESSES));
    byAddress.put(
        address, new Guesses(Math.min(wrong, 16), nanoTime.getAsLong() + waitS * 1_000_000_000L));
    throw wrong("The passphrase is not the configured one.");
  }

  private boolean matches(String authorization) {
    byte[] given = authorization.getBytes(StandardCharsets.UTF_8);
    byte[] right = ("Bearer " + passphrase.orElseThrow()).getBytes(StandardCharsets.UTF_8);
    return MessageDigest.isEqual(given, right);
  }

  private static Refused wrong(String detail) {
    return new Refused(401, "Passphrase needed", detail);
  }
}
