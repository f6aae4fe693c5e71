package steadypull.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Infers from the first rows of a table whose values are held in which rows each was polled.
 *
 * <p>A logger that polls one value after another and writes a row for each repeats the others. A
 * change shows a poll for certain. Where the spans between the changes of a column are multiples of
 * a number of rows, that number is its period and the row of its changes modulo the period its
 * phase: so it is polled in those rows, also where it does not change. A column that changes too
 * seldom takes the most frequent period of the others, with the row of its first value as phase if
 * the table begins ragged. Where no column keeps to rows, the shortest usual span between two
 * changes stands for the round, since no value changes twice within one, and an unchanged value
 * counts as fresh after a round and a half. If nothing changes, a ragged beginning tells the round:
 * as many rows as held columns that appear one after another. If not even that is there, only
 * changes count as fresh: too few fresh values, never too many.
 */
final class RoundSurvey {
  /** Rows that are looked at: two and a half hours at ten rows a second. Our choice. */
  static final int ROWS = 100_000;

  /** No round is longer: far more rows than a vehicle has parameters that are polled in turn. */
  private static final int LONGEST = 200;

  private final List<HeldColumn> columns;
  private int rows;

  RoundSurvey(int columnCount) {
    this.columns = IntStream.range(0, columnCount).mapToObj(each -> new HeldColumn()).toList();
  }

  /** A value of a held column in the row under way. */
  void value(int column, double value) {
    columns.get(column).add(rows, value);
  }

  /** The row is complete. */
  void endRow() {
    rows++;
  }

  /** Whether no further row is wanted. */
  boolean isComplete() {
    return rows >= ROWS;
  }

  /** When each of the held columns was polled, in their order. */
  List<Freshness> freshness() {
    int longest = Math.min(LONGEST, Math.max(2, rows / 2));
    List<Freshness> own = columns.stream().map(column -> column.freshness(longest)).toList();
    OptionalInt locked = mostFrequent(own.stream().filter(Freshness::isLocked).toList());
    OptionalInt loose =
        own.stream()
            .filter(each -> !each.isLocked())
            .flatMapToInt(each -> each.period().stream())
            .min();
    List<Freshness> all = new ArrayList<>();
    for (int each = 0; each < own.size(); each++) {
      boolean isKnown =
          own.get(each).isLocked() || (locked.isPresent() && own.get(each).period().isPresent());
      all.add(isKnown ? own.get(each) : assumed(columns.get(each), locked, loose));
    }
    return all;
  }

  private Freshness assumed(HeldColumn column, OptionalInt locked, OptionalInt loose) {
    if (column.firstRow() < 0) {
      return Freshness.unknown();
    }
    if (locked.isPresent() || (loose.isEmpty() && beginsRagged())) {
      int period = locked.orElse(columns.size());
      return beginsRagged()
          ? Freshness.every(period, column.firstRow() % period)
          : Freshness.every(period);
    }
    return loose.isPresent() ? Freshness.every(loose.getAsInt()) : Freshness.unknown();
  }

  /** Whether the held columns got their first values in rows of their own, one after another. */
  private boolean beginsRagged() {
    List<Integer> first = columns.stream().map(HeldColumn::firstRow).sorted().toList();
    return columns.size() > 1
        && IntStream.range(1, first.size())
            .allMatch(each -> first.get(each) == first.get(each - 1) + 1);
  }

  private static OptionalInt mostFrequent(List<Freshness> known) {
    return known.stream()
        .flatMap(each -> each.period().stream().boxed())
        .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()))
        .entrySet()
        .stream()
        .max(Map.Entry.<Integer, Long>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .map(Map.Entry::getKey)
        .map(OptionalInt::of)
        .orElse(OptionalInt.empty());
  }
}
