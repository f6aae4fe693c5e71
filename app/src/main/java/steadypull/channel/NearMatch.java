package steadypull.channel;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Finds the known words that somebody may have meant by an unknown one. Immutable. */
public final class NearMatch {
  private static final int MOST = 3;

  /** How much is compared of a long text: nothing longer is a slip of the pen. */
  private static final int LONGEST = 80;

  private final String found;
  private final Set<String> words;

  private NearMatch(String found) {
    this.found = found.substring(0, Math.min(LONGEST, found.length())).toLowerCase(Locale.ROOT);
    this.words = words(this.found);
  }

  /**
   * At most three known words near the found one, nearest first; empty if none is near. Near means
   * few letters differ, or at least half of the words in it are the same.
   */
  public static List<String> of(String found, Collection<String> known) {
    NearMatch match = new NearMatch(found);
    return known.stream()
        .map(match::rate)
        .filter(match::isNear)
        .sorted(
            Comparator.comparingInt(Rating::sharedWords).reversed().thenComparingInt(Rating::edits))
        .limit(MOST)
        .map(Rating::candidate)
        .toList();
  }

  /**
   * A question to append to a message, such as {@code Did you mean a, b?}; empty if none is near.
   */
  public static String question(String found, Collection<String> known) {
    List<String> near = of(found, known);
    return near.isEmpty() ? "" : " Did you mean " + String.join(", ", near) + "?";
  }

  private Rating rate(String candidate) {
    String lower = candidate.toLowerCase(Locale.ROOT);
    Set<String> shared = new HashSet<>(words);
    shared.retainAll(words(lower));
    return new Rating(candidate, shared.size(), edits(found, lower));
  }

  private boolean isNear(Rating rating) {
    return rating.edits <= Math.max(2, found.length() / 4)
        || (rating.sharedWords > 0 && rating.sharedWords * 2 >= words.size());
  }

  private static Set<String> words(String text) {
    return Stream.of(text.split("[^\\p{L}\\p{N}]+", -1))
        .filter(word -> !word.isEmpty())
        .collect(Collectors.toSet());
  }

  /** Letters to insert, delete or replace (Levenshtein distance), one row at a time. */
  private static int edits(String from, String to) {
    int[] row = new int[to.length() + 1];
    for (int column = 0; column < row.length; column++) {
      row[column] = column;
    }
    for (int line = 1; line <= from.length(); line++) {
      int diagonal = row[0];
      row[0] = line;
      for (int column = 1; column < row.length; column++) {
        int replaced = diagonal + (from.charAt(line - 1) == to.charAt(column - 1) ? 0 : 1);
        diagonal = row[column];
        row[column] = Math.min(replaced, 1 + Math.min(row[column], row[column - 1]));
      }
    }
    return row[to.length()];
  }

  private record Rating(String candidate, int sharedWords, int edits) {}
}
