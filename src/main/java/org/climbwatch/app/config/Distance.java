package org.climbwatch.app.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/**
 * How many slips of the pen lie between two words: a letter changed, left out, added, or two
 * neighbours swapped.
 */
final class Distance {
  private Distance() {}

  /** The known word that may have been meant: at most a third of the letters apart. */
  static Optional<String> nearest(String word, Collection<String> known) {
    int most = Math.min(2, word.length() / 3);
    return known.stream()
        .filter(each -> between(word, each) <= most)
        .min(Comparator.comparingInt(each -> between(word, each)));
  }

  static int between(String a, String b) {
    int[][] slips = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        slips[i][j] = i == 0 || j == 0 ? i + j : least(slips, a, b, i, j);
      }
    }
    return slips[a.length()][b.length()];
  }

  private static int least(int[][] slips, String a, String b, int i, int j) {
    boolean same = a.charAt(i - 1) == b.charAt(j - 1);
    int least = Math.min(slips[i - 1][j], slips[i][j - 1]) + 1;
    least = Math.min(least, slips[i - 1][j - 1] + (same ? 0 : 1));
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(least, slips[i - 2][j - 2] + 1) : least;
  }
}
