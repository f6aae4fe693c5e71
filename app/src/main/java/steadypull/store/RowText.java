package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jdbi.v3.core.JdbiException;

/** Short lists as a trip's row holds them: parts separated by blanks. */
final class RowText {
  private RowText() {}

  static String ofKeys(List<Long> keys) {
    return keys.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }

  static List<Long> keys(String text) {
    List<Long> keys = new ArrayList<>();
    for (String part : parts(text)) {
      keys.add(number(part));
    }
    return keys;
  }

  static String ofGaps(List<TripTally.GapMicros> gaps) {
    return gaps.stream()
        .map(gap -> gap.fromMicros() + "-" + gap.toMicros())
        .collect(Collectors.joining(" "));
  }

  static List<TripTally.GapMicros> gaps(String text) {
    List<TripTally.GapMicros> gaps = new ArrayList<>();
    for (String part : parts(text)) {
      int dash = part.indexOf('-');
      if (dash < 1) {
        throw new DamagedTripException("expected a gap such as 1000-9000, found " + part);
      }
      gaps.add(
          new TripTally.GapMicros(
              number(part.substring(0, dash)), number(part.substring(dash + 1))));
    }
    return gaps;
  }

  private static List<String> parts(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" ", -1));
  }

  private static long number(String text) throws JdbiException {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw new DamagedTripException("expected a number, found \"" + text + "\"", e);
    }
  }
}
