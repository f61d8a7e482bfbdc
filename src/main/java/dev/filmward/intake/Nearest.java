package dev.filmward.intake;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the known name that a word was most likely meant to be: the one with the fewest letters to
 * insert, remove or replace, if these are at most a third of the word. Upper and lower case count
 * as the same.
 *
 * <p>The distance is Levenshtein's (Binary codes capable of correcting deletions, insertions and
 * reversals, Soviet Physics Doklady 10 (1966) 707). Long words, and what comes after the first 500
 * names, are not compared, so that a bad file cannot make this slow.
 */
final class Nearest {
  private static final int LONGEST_COMPARED = 60;
  private static final int MOST_COMPARED = 500;

  private Nearest() {}

  static Optional<String> to(String word, Collection<String> known) {
    if (word.isEmpty() || word.length() > LONGEST_COMPARED) {
      return Optional.empty();
    }
    String best = "";
    int fewest = Math.max(1, word.length() / 3) + 1;
    for (String name : known.stream().limit(MOST_COMPARED).toList()) {
      if (Math.abs(name.length() - word.length()) < fewest) {
        int changes = distance(word.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
        best = changes < fewest ? name : best;
        fewest = Math.min(fewest, changes);
      }
    }
    return best.isEmpty() ? Optional.empty() : Optional.of(best);
  }

  private static int distance(String a, String b) {
    int[] above = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = above[0];
      above[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = above[j];
        above[j] = Math.min(replaced, Math.min(above[j], above[j - 1]) + 1);
      }
    }
    return above[b.length()];
  }
}
