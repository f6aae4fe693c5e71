package steadypull.report;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import steadypull.channel.QuantityFormat;
import steadypull.thermal.Belief;

/** Figures of a comparison as text: changes without a sign, intervals in words. Immutable. */
final class FigureText {
  /** What stands where nothing can be told. */
  static final String UNKNOWN = "\u2013";

  private final ReportWords words;
  private final QuantityFormat quantities;

  FigureText(ReportWords words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  QuantityFormat quantities() {
    return quantities;
  }

  /** {@code 2.3°}. */
  String difference(double kelvin) {
    return quantities.fineDifference(kelvin);
  }

  /** {@code 2.3° cooler}. */
  String change(double coolerByKelvin) {
    return words.say(
        coolerByKelvin < 0 ? "direction.hotter" : "direction.cooler", difference(coolerByKelvin));
  }

  /** Bounds of a change; where they differ in direction each says its own. */
  String range(Belief gain) {
    if (gain.low() < 0 && gain.high() > 0) {
      return span(gain);
    }
    double nearer = Math.min(Math.abs(gain.low()), Math.abs(gain.high()));
    double farther = Math.max(Math.abs(gain.low()), Math.abs(gain.high()));
    return words.say("interval", difference(nearer), difference(farther));
  }

  /** Bounds of a change with their directions. */
  String span(Belief gain) {
    if (gain.low() >= 0) {
      return words.say("range.cooler", difference(gain.low()), difference(gain.high()));
    }
    return gain.high() <= 0
        ? words.say("range.hotter", difference(gain.high()), difference(gain.low()))
        : words.say("range.both", difference(gain.low()), difference(gain.high()));
  }

  /** A temperature on the scale of a comparison. */
  String temperature(double degrees, boolean isAboveOutside) {
    return isAboveOutside ? signed(degrees) : quantities.fineTemperature(degrees);
  }

  /** The same in whole degrees. */
  String wholeTemperature(double degrees, boolean isAboveOutside) {
    return isAboveOutside
        ? quantities.temperatureDifference(degrees)
        : quantities.temperature(degrees);
  }

  /** Below outside is rare, and still has to be told from above. */
  private String signed(double kelvin) {
    String text = difference(kelvin);
    boolean isBelow = kelvin < 0 && !text.equals(difference(0));
    return isBelow ? "\u2212" + text : text;
  }

  /** The middle and, in brackets, the interval; a dash where nothing is believed. */
  String belief(Optional<Belief> belief, DoubleFunction<String> text, String unit) {
    return belief
        .map(
            each ->
                "%s%s (%s)"
                    .formatted(
                        text.apply(each.middle()),
                        unit,
                        words.say("interval", text.apply(each.low()), text.apply(each.high()))))
        .orElse(UNKNOWN);
  }

  /** A number, or a dash. */
  String number(OptionalDouble value, DoubleFunction<String> text) {
    return value.isPresent() ? text.apply(value.getAsDouble()) : UNKNOWN;
  }

  /** Seconds as {@code m:ss}. */
  static String minutes(double seconds) {
    long whole = Math.round(seconds);
    return "%d:%02d".formatted(whole / 60, whole % 60);
  }
}
