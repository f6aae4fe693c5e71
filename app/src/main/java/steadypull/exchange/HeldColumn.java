package steadypull.exchange;

import java.util.BitSet;
import java.util.Map;
import java.util.TreeMap;

/** Counts, over the first rows of a table, after how many rows one held column changes. */
final class HeldColumn {
  /** Fewer spans between changes could be multiples of anything by chance. Our choice. */
  private static final int LEAST_SPANS = 8;

  /** Share of spans that must be multiples of the round: a lost row spoils one. Our choice. */
  private static final double SHARE = 0.95;

  /** Of spans that keep to no round the shortest, but for the one in twenty that a fault made. */
  private static final double SHORT_SHARE = 0.05;

  /** The phase at the beginning is what counts; later a lost row may shift it. Our choice. */
  private static final int EARLY_CHANGES = 20;

  private final Map<Integer, Integer> spans = new TreeMap<>();
  private final BitSet changeRows = new BitSet();
  private boolean hasValue;
  private double value;
  private int firstRow = -1;
  private int changedRow = -1;

  void add(int row, double found) {
    if (!hasValue) {
      firstRow = row;
    } else if (found != value) {
      if (changedRow >= 0) {
        spans.merge(row - changedRow, 1, Integer::sum);
      }
      changeRows.set(row);
      changedRow = row;
    }
    hasValue = true;
    value = found;
  }

  /** First row with a value; negative if there was none. */
  int firstRow() {
    return firstRow;
  }

  /**
   * When this column is polled, from its own changes alone: the greatest number of rows that
   * divides the spans between its changes, or, where none does, about the shortest of them, for no
   * value changes twice within a round.
   */
  Freshness freshness(int longest) {
    int count = spans.values().stream().mapToInt(Integer::intValue).sum();
    if (count < LEAST_SPANS) {
      return Freshness.unknown();
    }
    for (int period = longest; period > 1; period--) {
      if (dividing(period) >= SHARE * count) {
        return Freshness.every(period, phase(period));
      }
    }
    return Freshness.every(wait(shortSpan(count)));
  }

  /** Where polls keep to no rows, an unchanged value was polled anew after a round and a half. */
  private static int wait(int round) {
    return round + round / 2;
  }

  private int dividing(int period) {
    return spans.entrySet().stream()
        .filter(span -> span.getKey() % period == 0)
        .mapToInt(Map.Entry::getValue)
        .sum();
  }

  private int phase(int period) {
    int[] votes = new int[period];
    changeRows.stream().limit(EARLY_CHANGES).forEach(row -> votes[row % period]++);
    int most = 0;
    for (int phase = 1; phase < period; phase++) {
      most = votes[phase] > votes[most] ? phase : most;
    }
    return most;
  }

  private int shortSpan(int count) {
    int passed = 0;
    for (Map.Entry<Integer, Integer> span : spans.entrySet()) {
      passed += span.getValue();
      if (passed > SHORT_SHARE * count) {
        return span.getKey();
      }
    }
    return 1;
  }
}
