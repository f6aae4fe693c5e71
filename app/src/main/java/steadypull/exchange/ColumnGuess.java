package steadypull.exchange;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitConversion;

/**
 * The guess what one column of a foreign table is.
 *
 * @param use {@code id[unit]} or {@code ignore}, as in a mapping
 * @param comment why, and what is uncertain; an uncertain one begins with {@code check:}
 */
record ColumnGuess(String use, String comment) {
  /**
   * Guesses from header words, unit and range of values.
   *
   * @param taken the channels of earlier columns and those columns' headers; the guess is added
   */
  static ColumnGuess of(ColumnGlance column, Map<String, String> taken) {
    if (column.isEmpty()) {
      return new ColumnGuess(MappingReader.IGNORE, "it is empty");
    }
    if (!column.isNumeric()) {
      return new ColumnGuess(
          MappingReader.IGNORE,
          "check: it holds text, in %d of %d cells, such as %s"
              .formatted(
                  column.texts(),
                  column.filled(),
                  CellPlace.quoted(column.firstText().orElse(""))));
    }
    ColumnGuess guess = numeric(column, taken);
    taken.putIfAbsent(guess.use().replaceAll("\\[.*", ""), column.header());
    return guess;
  }

  private static ColumnGuess numeric(ColumnGlance column, Map<String, String> taken) {
    Optional<Channel> own =
        Channel.ofHeader(column.header())
            .filter(each -> !taken.containsKey(each.id()))
            .filter(each -> ColumnHeader.unitFault(each).isEmpty());
    if (own.isPresent()) {
      return new ColumnGuess(own.get().header(), values(column));
    }
    ChannelWords words = ChannelWords.shipped();
    HeaderUnit parted = HeaderUnit.of(column, spelled -> isUnitOf(column.header(), spelled));
    String unit = parted.unit();
    List<ChannelWords.Entry> fitting =
        Stream.of(column.header(), parted.name())
            .flatMap(
                header -> words.ranked(header, entry -> hasUnit(entry.channel(), unit)).stream())
            .toList();
    if (fitting.isEmpty()) {
      return foreign(column, parted, taken, "check: not a channel of ours, kept under this name; ");
    }
    ChannelWords.Entry best = fitting.getFirst();
    String takenBy = taken.get(best.channel().id());
    return takenBy == null
        ? known(column, best, unit)
        : foreign(
            column,
            parted,
            taken,
            "check: %s is %s already; ".formatted(best.channel().id(), CellPlace.quoted(takenBy)));
  }

  /** A unit of a channel that the header may mean, or one that needs no such company. */
  private static boolean isUnitOf(String header, String spelled) {
    String unit = ChannelWords.shipped().unit(spelled);
    boolean isOfOne =
        !unit.equals("1")
            && !ChannelWords.shipped()
                .ranked(
                    header,
                    entry -> UnitConversion.between(unit, entry.channel().unit()).isPresent())
                .isEmpty();
    return isOfOne || (spelled.length() > 1 && isKnown(unit));
  }

  private static boolean isKnown(String unit) {
    return Channels.all().stream()
        .anyMatch(channel -> UnitConversion.between(unit, channel.unit()).isPresent());
  }

  private static boolean hasUnit(Channel channel, String unit) {
    return unit.isEmpty() || UnitConversion.between(unit, channel.unit()).isPresent();
  }

  private static ColumnGuess known(ColumnGlance column, ChannelWords.Entry entry, String unit) {
    String unitOf = entry.channel().unit();
    if (unit.isEmpty()) {
      Optional<String> fitting =
          UnitConversion.unitsFor(unitOf).stream()
              .filter(each -> fits(column, entry, each))
              .findFirst();
      return new ColumnGuess(
          entry.channel().id() + "[" + fitting.orElse(unitOf) + "]",
          "check: the header tells no unit that is known; "
              + values(column)
              + fitsOrNot(fitting.isPresent()));
    }
    boolean fits = fits(column, entry, unit);
    return new ColumnGuess(
        entry.channel().id() + "[" + unit + "]",
        (fits ? "" : "check: ") + values(column) + (fits ? "" : fitsOrNot(false)));
  }

  private static String fitsOrNot(boolean fits) {
    return fits ? " fit this one" : " do not fit it";
  }

  private static boolean fits(ColumnGlance column, ChannelWords.Entry entry, String unit) {
    DoublePredicate isPlausible =
        value ->
            UnitConversion.between(unit, entry.channel().unit())
                .filter(conversion -> entry.isPlausible(conversion.apply(value)))
                .isPresent();
    return isPlausible.test(column.least()) && isPlausible.test(column.greatest());
  }

  private static ColumnGuess foreign(
      ColumnGlance column, HeaderUnit parted, Map<String, String> taken, String why) {
    String unit = parted.unit();
    String id = String.join("_", ChannelWords.words(parted.name())).replaceAll("[^a-z0-9_]", "");
    String name = id.isEmpty() || !Character.isLetter(id.charAt(0)) ? "column_" + id : id;
    String free = name;
    for (int next = 2; taken.containsKey(free) || Channels.find(free).isPresent(); next++) {
      free = name + "_" + next;
    }
    String written = Channel.ofHeader(free + "[" + unit + "]").isPresent() ? unit : "1";
    String open = written.equals(unit) ? "" : "unit not told; ";
    return new ColumnGuess(free + "[" + written + "]", why + open + values(column));
  }

  private static String values(ColumnGlance column) {
    return "values %s to %s%s"
        .formatted(
            NumberCell.text(column.least()),
            NumberCell.text(column.greatest()),
            column.texts() == 0 ? "" : " and %d cells without one".formatted(column.texts()));
  }
}
