package steadypull.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A header of a foreign table, parted into name and unit, such as {@code Speed [mph]}, {@code Speed
 * mph}, {@code speed_km_h} or {@code SpeedKmh}.
 *
 * @param name what is not the unit
 * @param unit in the spelling that we know; empty if the header tells none
 */
record HeaderUnit(String name, String unit) {
  private static final Pattern GAP = Pattern.compile("[\\s_,]+");
  private static final Pattern HUMP = Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})");

  /**
   * Parts a header; brackets come before words.
   *
   * @param isUnit whether words at the end, as they are spelled, are a unit; the longest is taken
   */
  static HeaderUnit of(ColumnGlance column, Predicate<String> isUnit) {
    String header = column.header();
    if (!column.bracketed().isEmpty()) {
      return new HeaderUnit(header, ChannelWords.shipped().unit(column.bracketed()));
    }
    return atGap(header, isUnit)
        .or(() -> atHump(header, isUnit))
        .orElse(new HeaderUnit(header, ""));
  }

  private static Optional<HeaderUnit> atGap(String header, Predicate<String> isUnit) {
    return starts(header, GAP).stream()
        .flatMap(start -> parted(header, start, isUnit).stream())
        .findFirst();
  }

  /** A hump may lie within a unit, as in {@code MAPkPa}; the letter before is tried first. */
  private static Optional<HeaderUnit> atHump(String header, Predicate<String> isUnit) {
    return starts(header, HUMP).stream()
        .flatMap(start -> List.of(start - 1, start).stream())
        .flatMap(start -> parted(header, start, isUnit).stream())
        .findFirst();
  }

  /** Where the last two words start, the earlier first; never the beginning. */
  private static List<Integer> starts(String header, Pattern between) {
    List<Integer> starts = new ArrayList<>();
    between
        .matcher(header)
        .results()
        .filter(gap -> gap.start() > 0 && gap.end() < header.length())
        .forEach(gap -> starts.add(gap.end()));
    return starts.subList(Math.max(0, starts.size() - 2), starts.size());
  }

  private static Optional<HeaderUnit> parted(String header, int start, Predicate<String> isUnit) {
    String words = GAP.matcher(header.substring(start)).replaceAll(" ");
    return List.of(words, words.replace(' ', '/')).stream()
        .filter(isUnit)
        .findFirst()
        .map(
            spelled ->
                new HeaderUnit(header.substring(0, start), ChannelWords.shipped().unit(spelled)));
  }
}
