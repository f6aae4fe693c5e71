package steadypull.store;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.store.page.FoundRow;
import steadypull.store.page.Value;

/**
 * The number and types of a table's columns, by which a row without a name is told. One letter a
 * column: {@code n} nothing (the row's own number stands beside it), {@code i} integer, {@code t}
 * text, {@code b} bytes, {@code o} integer or nothing, {@code r} real or nothing. Immutable.
 */
record RowForm(String letters) {
  /** Reads the columns of a row that has this form, in their order. */
  static final class Columns {
    private final List<Value> values;
    private int next;

    private Columns(List<Value> values) {
      this.values = values;
    }

    Columns skip() {
      next++;
      return this;
    }

    long whole() {
      return values.get(next++) instanceof Value.Whole(long number) ? number : 0;
    }

    String text() {
      return values.get(next++) instanceof Value.Text(String text) ? text : "";
    }

    Optional<Integer> optionalWhole() {
      return values.get(next++) instanceof Value.Whole(long number)
          ? Optional.of((int) number)
          : Optional.empty();
    }

    OptionalDouble real() {
      return switch (values.get(next++)) {
        case Value.Whole(long number) -> OptionalDouble.of((double) number);
        case Value.Real(double number) -> OptionalDouble.of(number);
        case Value.Nothing _, Value.Text _, Value.Bytes _, Value.Unreadable _ ->
            OptionalDouble.empty();
      };
    }

    /** The bytes, or empty if the page on which they lay is damaged. */
    Optional<byte[]> bytes() {
      return values.get(next++) instanceof Value.Bytes(byte[] bytes)
          ? Optional.of(bytes)
          : Optional.empty();
    }
  }

  /** The columns of a row, or empty if it has another form. */
  Optional<Columns> read(FoundRow row) {
    List<Value> values = row.values();
    if (values.size() != letters.length()) {
      return Optional.empty();
    }
    for (int column = 0; column < values.size(); column++) {
      if (!fits(letters.charAt(column), values.get(column))) {
        return Optional.empty();
      }
    }
    return Optional.of(new Columns(values));
  }

  private static boolean fits(char letter, Value value) {
    return switch (value) {
      case Value.Nothing _ -> letter == 'n' || letter == 'o' || letter == 'r';
      case Value.Whole _ -> letter == 'i' || letter == 'o' || letter == 'r';
      case Value.Real _ -> letter == 'r';
      case Value.Text _ -> letter == 't';
      case Value.Bytes _, Value.Unreadable _ -> letter == 'b';
    };
  }
}
