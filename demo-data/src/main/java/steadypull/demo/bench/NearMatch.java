package steadypull.demo.bench;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds the word that somebody probably meant. */
final class NearMatch {
  private NearMatch() {}

  /** The nearest word, or empty if none is near: more than a third of the letters differ. */
  static Optional<String> of(String written, List<String> words) {
    return words.stream()
        .min(Comparator.comparingInt(word -> distance(written, word)))
        .filter(word -> distance(written, word) * 3 <= Math.max(3, word.length()));
  }

  /** Says that something is not there, what was probably meant, and what there is. */
  static String notFound(String kind, String written, List<String> words) {
    return "no %s named \"%s\". %sThe %ss are %s"
        .formatted(
            kind,
            written,
            of(written, words).map(near -> "Did you mean " + near + "? ").orElse(""),
            kind,
            String.join(", ", words));
  }

  /** Insertions, deletions and replacements between two words (Levenshtein 1966, from memory). */
  private static int distance(String one, String other) {
    int[] row = new int[other.length() + 1];
    for (int j = 0; j < row.length; j++) {
      row[j] = j;
    }
    for (int i = 1; i <= one.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= other.length(); j++) {
        int replaced = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[other.length()];
  }
}
