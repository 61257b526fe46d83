package cistern.puncture.drug;

import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * How many letters must be put in, left out, changed or swapped with their neighbour to make one
 * word of another (optimal string alignment).
 */
final class SpellingDistance {

  /** How many names are named. */
  static final int NAMED = 3;

  /** Letters of a word for one slip. */
  private static final int LETTERS_PER_SLIP = 3;

  private SpellingDistance() {}

  /** The printed names within one slip for three letters, nearest first. */
  static List<String> nearest(String word, Map<String, String> printedByJoined) {
    int most = word.length() / LETTERS_PER_SLIP;
    return printedByJoined.entrySet().stream()
        .filter(e -> Math.abs(e.getKey().length() - word.length()) <= most)
        .map(e -> Map.entry(of(word, e.getKey()), e.getValue()))
        .filter(e -> e.getKey() <= most)
        .sorted(Comparator.comparingInt(Map.Entry::getKey))
        .limit(NAMED)
        .map(Map.Entry::getValue)
        .toList();
  }

  static int of(String one, String other) {
    int[][] d = new int[one.length() + 1][other.length() + 1];
    for (int i = 0; i <= one.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= other.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= one.length(); i++) {
      for (int j = 1; j <= other.length(); j++) {
        int change = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        boolean isSwapped =
            i > 1
                && j > 1
                && one.charAt(i - 1) == other.charAt(j - 2)
                && one.charAt(i - 2) == other.charAt(j - 1);
        if (isSwapped) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[one.length()][other.length()];
  }
}
