package steadypull.advice;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Names that somebody may have meant: those within a few letters, nearest first. */
final class NearMatches {
  private static final int MOST_SHOWN = 3;

  private NearMatches() {}

  /** {@code ; did you mean "limit"?}, or the names that exist if none is near. */
  static String hint(String name, List<String> known) {
    List<String> near =
        known.stream()
            .filter(each -> isNear(name, each))
            .sorted(Comparator.comparingInt(each -> distance(name, each)))
            .limit(MOST_SHOWN)
            .toList();
    return near.isEmpty()
        ? "; there are " + String.join(", ", known)
        : near.stream().collect(Collectors.joining("\" or \"", "; did you mean \"", "\"?"));
  }

  private static boolean isNear(String name, String other) {
    return distance(name, other) <= Math.max(2, other.length() / 3)
        || (name.length() > 3 && (other.startsWith(name) || name.startsWith(other)));
  }

  /**
   * Fewest single-letter insertions, deletions and replacements (V. I. Levenshtein, Soviet Physics
   * Doklady 10, 1966; from memory).
   */
  static int distance(String left, String right) {
    int[] above = new int[right.length() + 1];
    for (int column = 0; column <= right.length(); column++) {
      above[column] = column;
    }
    for (int row = 1; row <= left.length(); row++) {
      int[] here = new int[right.length() + 1];
      here[0] = row;
      for (int column = 1; column <= right.length(); column++) {
        int replace = left.charAt(row - 1) == right.charAt(column - 1) ? 0 : 1;
        here[column] =
            Math.min(above[column - 1] + replace, 1 + Math.min(above[column], here[column - 1]));
      }
      above = here;
    }
    return above[right.length()];
  }
}
