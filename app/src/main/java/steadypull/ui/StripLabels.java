package steadypull.ui;

import java.util.DoubleSummaryStatistics;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import steadypull.drive.StripState;
import steadypull.drive.Trace;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;

/** Where the labels inside a chart find room beside the lines that are drawn there. */
final class StripLabels {
  private static final double UNDER_LINE = 30;
  private static final double OVER_LINE = 14;
  private static final double FOOT = 10;
  private static final double LABEL_ASCENT = 18;
  private static final double LABEL_DESCENT = 6;
  private static final double LABEL_UNDER_CEILING = 22;
  private static final double LABEL_IN_HATCH = 9;
  private static final double BESIDE_DROP = 12;
  private static final long LABEL_MICROS = 70_000_000;
  private static final double CLEAR_CELSIUS = 1;

  private StripLabels() {}

  /** Baseline of the label of the dashed line, at the right end of it. */
  static double easedBaseline(StripState strip, StripSlot slot) {
    if (strip.eased().isEmpty()) {
      return slot.top();
    }
    StripScale scale = PlotView.scale(strip, slot);
    double end = scale.y(strip.eased().get().at(Fan.MEDIAN, CourseWords.HORIZON_SECONDS));
    double under = end + UNDER_LINE;
    return under < slot.top() + slot.height() - FOOT ? under : end - OVER_LINE;
  }

  /** Right end of that label: beside the drop line of the crossing, never across it. */
  static double easedRight(StripState strip, double width) {
    double usual = DriveGeometry.CHART_RIGHT - FOOT + 2;
    OptionalDouble seconds = secondsToCrossing(strip);
    if (seconds.isEmpty()) {
      return usual;
    }
    double drop = StripScale.x(seconds.getAsDouble());
    boolean crosses = drop > usual - width - BESIDE_DROP && drop < usual + BESIDE_DROP;
    boolean hasRoom = drop - BESIDE_DROP - width > DriveGeometry.NOW + BESIDE_DROP;
    return crosses && hasRoom ? drop - BESIDE_DROP : usual;
  }

  /** Seconds until the median meets the limit, if it does so inside the chart. */
  static OptionalDouble secondsToCrossing(StripState strip) {
    if (!(strip.forecast() instanceof ChannelForecast.Ready ready)
        || ready.toLimit().isEmpty()
        || ready.nowCelsius() >= ready.toLimit().get().limitCelsius()) {
      return OptionalDouble.empty();
    }
    OptionalDouble seconds = ready.toLimit().get().seconds();
    return seconds.isPresent() && seconds.getAsDouble() <= CourseWords.HORIZON_SECONDS
        ? seconds
        : OptionalDouble.empty();
  }

  /** Baseline of the label of the limit: in the hatch, under the ceiling, or under the trace. */
  static double limitBaseline(StripState strip, StripSlot slot) {
    StripScale scale = PlotView.scale(strip, slot);
    double ceiling = scale.limitY();
    DoubleSummaryStatistics old = oldestPart(strip.trace());
    boolean isClear = old.getCount() == 0 || old.getMax() < scale.limitCelsius() - CLEAR_CELSIUS;
    if (slot.form() == StripSlot.Form.LEADING && isClear) {
      return ceiling - LABEL_IN_HATCH;
    }
    double usual = ceiling + LABEL_UNDER_CEILING;
    if (old.getCount() == 0 || !meets(old, scale, usual)) {
      return usual;
    }
    double under = scale.y(old.getMin()) + LABEL_ASCENT + LABEL_DESCENT;
    return under < slot.top() + slot.height() - LABEL_DESCENT ? under : usual;
  }

  private static boolean meets(DoubleSummaryStatistics old, StripScale scale, double baseline) {
    return scale.y(old.getMin()) > baseline - LABEL_ASCENT
        && scale.y(old.getMax()) < baseline + LABEL_DESCENT;
  }

  /** The part of the trace that a label at the left end lies over. */
  private static DoubleSummaryStatistics oldestPart(Trace trace) {
    return IntStream.range(0, trace.size())
        .filter(point -> trace.timeMicros(point) <= trace.timeMicros(0) + LABEL_MICROS)
        .mapToDouble(trace::value)
        .summaryStatistics();
  }
}
