package steadypull.report;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import steadypull.compare.Comparison;
import steadypull.compare.Course;
import steadypull.thermal.Belief;

/** How much of a comparison a picture shows, on paper and on the screen. Stateless. */
public final class ComparisonScales {
  private static final int LONGEST_SECONDS = 301;
  private static final int SHORTEST_SECONDS = 2;

  /** The limit is drawn if it lies within so many K over the hottest. Our choice. */
  private static final double CEILING_KELVIN = 12;

  private static final double OVER_LIMIT_KELVIN = 4;

  private ComparisonScales() {}

  /** Seconds from the onset, the onset itself included. */
  public static int seconds(Comparison comparison) {
    int longest = Math.max(comparison.beforeCourse().seconds(), comparison.afterCourse().seconds());
    return Math.clamp(longest, SHORTEST_SECONDS, LONGEST_SECONDS);
  }

  /** Power from nothing to the most. */
  public static PictureScale load(Comparison comparison, double top, double height) {
    double most =
        Stream.of(comparison.beforeKilowatts(), comparison.afterKilowatts())
            .flatMapToDouble(course -> Arrays.stream(shown(course.middle(), comparison)))
            .filter(power -> power > 0)
            .max()
            .orElse(1);
    return new PictureScale(top, height, 0, most * 1.05);
  }

  /** Both temperatures with their bands, where they settle, and the limit if it is near. */
  public static PictureScale temperature(ComparisonWords words, double top, double height) {
    Comparison comparison = words.comparison();
    DoubleSummaryStatistics shown =
        DoubleStream.concat(
                Stream.of(comparison.beforeCourse(), comparison.afterCourse())
                    .flatMapToDouble(course -> bounds(course, comparison)),
                Stream.of(comparison.before().settles(), comparison.after().settles())
                    .flatMap(Optional::stream)
                    .mapToDouble(Belief::middle))
            .filter(value -> !Double.isNaN(value))
            .summaryStatistics();
    double hottest = shown.getCount() == 0 ? 1 : shown.getMax();
    double coldest = shown.getCount() == 0 ? 0 : shown.getMin();
    OptionalDouble limit = words.limitOnScale();
    boolean isNear =
        limit.isPresent()
            && limit.getAsDouble() > coldest
            && limit.getAsDouble() < hottest + CEILING_KELVIN;
    double high = isNear ? Math.max(hottest, limit.getAsDouble() + OVER_LIMIT_KELVIN) : hottest;
    return new PictureScale(top, height, coldest - 1, high + 2);
  }

  private static DoubleStream bounds(Course course, Comparison comparison) {
    return DoubleStream.concat(
        Arrays.stream(shown(course.low(), comparison)),
        Arrays.stream(shown(course.high(), comparison)));
  }

  /** The gain over time and settled, from no change or what is hotter. */
  public static PictureScale gain(Comparison comparison, double top, double height) {
    DoubleSummaryStatistics shown =
        Stream.of(
                Arrays.stream(shown(comparison.lastingGain().middle(), comparison)),
                Arrays.stream(gain(comparison)),
                comparison.settledGain().stream().mapToDouble(Belief::middle))
            .flatMapToDouble(values -> values)
            .filter(value -> !Double.isNaN(value))
            .summaryStatistics();
    return new PictureScale(
        top, height, Math.min(0, shown.getMin()), Math.max(1, shown.getMax()) * 1.08);
  }

  /** The whole gain, second by second: what lasts and what only delays. */
  public static double[] gain(Comparison comparison) {
    double[] lasting = shown(comparison.lastingGain().middle(), comparison);
    double[] delaying = comparison.delayingGain().middle();
    double[] whole = new double[Math.min(lasting.length, delaying.length)];
    Arrays.setAll(whole, i -> lasting[i] + delaying[i]);
    return whole;
  }

  /** As much of a line as is shown. */
  public static double[] shown(double[] values, Comparison comparison) {
    return Arrays.copyOf(values, Math.min(values.length, seconds(comparison)));
  }
}
