package steadypull.vehicle;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The forms in which a tyre's size is written (ISO 4000-1 and the ETRTO standards manual for metric
 * sizes, the tyre and rim yearbooks for inches; from memory). Stateless.
 *
 * <p>Metric: width in mm, height as a percentage of it, construction, rim in inches. Where no
 * height is written the series of such tyres is meant; catalogues then spread by 3 %.
 */
final class TyreDesignation {
  private static final double METRES_PER_INCH = 0.0254;

  /** Makers' diameters differ from the designation's by 1.5 % (ETRTO's tolerance, from memory). */
  private static final double SPREAD = 0.015;

  private static final double WIDE_SPREAD = 0.03;

  /** Height of metric tyres without a series: 80 to 82 % (185R14 is 650 mm; from memory). */
  private static final double UNSAID_METRIC = 0.80;

  /** Of tyres of 7.50R16's kind, with 5 degree rims (7.50R16 is 805 mm; from memory). */
  private static final double UNSAID_INCH = 1.05;

  /** Of tyres of 11R22.5's kind, with 15 degree rims (11R22.5 is 1052 mm; from memory). */
  private static final double UNSAID_TUBELESS = 0.86;

  private static final String CONSTRUCTION = "\\s*(?:Z?(R)F?|[BD-])\\s*";
  private static final String RIM = "(\\d{2}(?:\\.5)?)";

  /**
   * Commercial tyre, load index with speed letter, load range, plies, extra load, mud and snow:
   * none changes the size (common practice, no source).
   */
  private static final String REST =
      "(?:[\\s/]*(?:CP|C|LT|ST|XL|RF|M\\+S"
          + "|\\(?\\d{2,3}(?:/\\d{2,3})?\\s*[A-Y]\\d?\\)?"
          + "|\\d{1,2}\\s*PR"
          + "|[B-HJ-N](?![A-Z\\d]))){0,5}";

  private static final Pattern METRIC =
      Pattern.compile("(?:P|LT|ST|T)?\\s*(\\d{3})\\s*/\\s*(\\d{2,3})" + CONSTRUCTION + RIM + REST);
  private static final Pattern METRIC_WITHOUT_SERIES =
      Pattern.compile("(\\d{3})" + CONSTRUCTION + RIM + REST);
  private static final Pattern INCH =
      Pattern.compile("(\\d{1,2}(?:\\.\\d{1,2})?)" + CONSTRUCTION + RIM + REST);
  private static final Pattern FLOTATION =
      Pattern.compile(
          "(?:LT)?\\s*(\\d{2}(?:\\.\\d{1,2})?)\\s*[X*]\\s*(\\d{1,2}(?:\\.\\d{1,2})?)"
              + CONSTRUCTION
              + RIM
              + REST);

  private TyreDesignation() {}

  /** The tyre, or empty if the text is no designation. */
  static Optional<TyreSize> read(String text) {
    String upper = text.toUpperCase(Locale.ROOT);
    return metric(text, METRIC.matcher(upper))
        .or(() -> metricWithoutSeries(text, METRIC_WITHOUT_SERIES.matcher(upper)))
        .or(() -> flotation(text, FLOTATION.matcher(upper)))
        .or(() -> inch(text, INCH.matcher(upper)));
  }

  private static Optional<TyreSize> metric(String text, Matcher found) {
    if (!found.matches()) {
      return Optional.empty();
    }
    double height = number(found, 1) / 1000 * number(found, 2) / 100;
    return Optional.of(
        new TyreSize(
            text, number(found, 4) * METRES_PER_INCH + 2 * height, found.group(3) != null, SPREAD));
  }

  private static Optional<TyreSize> metricWithoutSeries(String text, Matcher found) {
    return found.matches()
        ? Optional.of(unsaid(text, found, number(found, 1) / 1000 * UNSAID_METRIC))
        : Optional.empty();
  }

  private static Optional<TyreSize> inch(String text, Matcher found) {
    if (!found.matches()) {
      return Optional.empty();
    }
    double series = found.group(3).endsWith(".5") ? UNSAID_TUBELESS : UNSAID_INCH;
    return Optional.of(unsaid(text, found, number(found, 1) * METRES_PER_INCH * series));
  }

  private static TyreSize unsaid(String text, Matcher found, double height) {
    return new TyreSize(
        text, number(found, 3) * METRES_PER_INCH + 2 * height, found.group(2) != null, WIDE_SPREAD);
  }

  /** Diameter and width in inches: nothing is to be computed. */
  private static Optional<TyreSize> flotation(String text, Matcher found) {
    return found.matches()
        ? Optional.of(
            new TyreSize(text, number(found, 1) * METRES_PER_INCH, found.group(3) != null, SPREAD))
        : Optional.empty();
  }

  private static double number(Matcher found, int group) {
    return Double.parseDouble(found.group(group));
  }
}
