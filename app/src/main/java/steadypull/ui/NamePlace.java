package steadypull.ui;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * How the name of a strip stands with its value: beside it on one line, beside it on two, or above
 * it where it is too long for that. Each strip is set by itself. Baselines count from its top.
 *
 * @param text the name, in one line or two
 * @param room how wide the name and the trend may be
 * @param name baseline of the first line
 * @param trend baseline of the trend
 * @param value baseline of the value
 */
record NamePlace(String text, double room, double name, double trend, double value) {
  private static final double WHOLE = DriveGeometry.VALUE_RIGHT - DriveGeometry.TEXT_LEFT;
  private static final double GAP = 8;
  private static final double ALONE_LOWER = 14;

  /**
   * Finds the place.
   *
   * @param slot the strip's place
   * @param name its name
   * @param hasTrend whether a trend is known; without one the name has its line
   * @param valueWidth width of the value with its degree sign
   * @param width width of a text in the name's type
   */
  static NamePlace of(
      StripSlot slot,
      String name,
      boolean hasTrend,
      double valueWidth,
      ToDoubleFunction<String> width) {
    double beside = WHOLE - valueWidth - GAP;
    return switch (slot.form()) {
      case LEADING -> new NamePlace(name, WHOLE, 38, 184, 140);
      case SMALL -> small(name, beside, width);
      case CALM -> calm(name, beside, width).alone(!hasTrend).lower((slot.height() - 99.5) / 2);
    };
  }

  private static NamePlace calm(String name, double beside, ToDoubleFunction<String> width) {
    if (width.applyAsDouble(name) <= beside) {
      return new NamePlace(name, beside, 43.8, 73.8, 72.2);
    }
    return inTwoLines(name, beside, width)
        .map(lines -> new NamePlace(lines, beside, 30, 83, 72.2))
        .orElseGet(() -> new NamePlace(name, WHOLE, 31, 78, 86));
  }

  private static NamePlace small(String name, double beside, ToDoubleFunction<String> width) {
    Optional<String> lines =
        width.applyAsDouble(name) <= beside ? Optional.empty() : inTwoLines(name, beside, width);
    return lines
        .map(each -> new NamePlace(each, beside, 26, 0, 48.5))
        .orElseGet(() -> new NamePlace(name, beside, 40, 0, 48.5));
  }

  /** The name broken where its two lines come out shortest; empty if they are too long even so. */
  private static Optional<String> inTwoLines(
      String name, double room, ToDoubleFunction<String> width) {
    return IntStream.range(0, name.length())
        .filter(at -> name.charAt(at) == ' ')
        .mapToObj(at -> name.substring(0, at) + "\n" + name.substring(at + 1))
        .filter(lines -> width.applyAsDouble(lines) <= room)
        .min(Comparator.comparingDouble(width));
  }

  /** Without a trend a name beside its value stands in the middle. */
  private NamePlace alone(boolean isAlone) {
    return isAlone && room < WHOLE
        ? new NamePlace(text, room, name + ALONE_LOWER, trend, value)
        : this;
  }

  /** A strip may be taller than with four: its texts stay in the middle. */
  private NamePlace lower(double by) {
    return new NamePlace(text, room, name + by, trend + by, value + by);
  }
}
