package org.amperskin.units;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the word a person probably meant.
 *
 * <p>Distance is the number of single-letter insertions, deletions, replacements and swaps of
 * neighbours that turn one word into the other, letter case and hyphens aside. Guaranteed: the same
 * answer whatever the order of the words; ties go to the alphabetically first. Not guaranteed: an
 * answer; nothing is offered when more than a third of the letters (at least two) would have to
 * change. Cost: product of the word lengths for each candidate.
 */
public final class NearestWord {
  private NearestWord() {}

  /**
   * The nearest of the known words, or nothing when none is near.
   *
   * @param typed what was typed
   * @param known the words that would have been right
   */
  public static Optional<String> of(String typed, Collection<String> known) {
    int allowed = Math.max(2, typed.length() / 3);
    String best = null;
    int bestDistance = Integer.MAX_VALUE;
    for (String word : known) {
      int d = distance(plain(typed), plain(word));
      if (d < bestDistance || (d == bestDistance && best != null && word.compareTo(best) < 0)) {
        best = word;
        bestDistance = d;
      }
    }
    boolean near = bestDistance <= allowed && best != null && bestDistance < best.length();
    return near ? Optional.of(best) : Optional.empty();
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replace('_', '-').replace("-", "");
  }

  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
