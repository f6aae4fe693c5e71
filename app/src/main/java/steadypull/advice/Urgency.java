package steadypull.advice;

import java.util.Comparator;

/**
 * How an advisory ranks: level first, then the rule's priority. The most urgent sorts first.
 *
 * @param level the level
 * @param priority 1 to 9, 1 goes first
 */
record Urgency(Level level, int priority) implements Comparable<Urgency> {
  private static final Comparator<Urgency> MOST_URGENT_FIRST =
      Comparator.comparing(Urgency::level).reversed().thenComparingInt(Urgency::priority);

  boolean isWorseThan(Urgency other) {
    return compareTo(other) < 0;
  }

  @Override
  public int compareTo(Urgency other) {
    return MOST_URGENT_FIRST.compare(this, other);
  }
}
