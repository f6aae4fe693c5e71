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
  private static final double SEARCH_STEP_SECONDS = 2;

  private StripLabels() {}

  /**
   * Baseline of the label of the dashed line: under all that is drawn there, else under its end.
   */
  static double easedBaseline(StripState strip, StripSlot slot, double width) {
    if (strip.eased().isEmpty()) {
      return slot.top();
    }
    StripScale scale = PlotView.scale(strip, slot);
    Fan eased = strip.eased().get();
    double clear = lowest(strip, eased, scale, width) + LABEL_ASCENT + LABEL_DESCENT;
    double bottom = slot.top() + slot.height() - FOOT;
    if (clear < bottom) {
      return clear;
    }
    double end = scale.y(eased.at(Fan.MEDIAN, CourseWords.HORIZON_SECONDS));
    return end + UNDER_LINE < bottom ? end + UNDER_LINE : end - OVER_LINE;
  }

  /** y under which the label is free, over its whole width. */
  private static double lowest(StripState strip, Fan eased, StripScale scale, double width) {
    double right = easedRight(strip, width);
    double lowest = scale.limitY();
    for (double ahead = 0; ahead <= CourseWords.HORIZON_SECONDS; ahead += SEARCH_STEP_SECONDS) {
      double x = StripScale.x(ahead);
      if (x >= right - width - LABEL_DESCENT && x <= right) {
        lowest = Math.max(lowest, scale.y(eased.at(Fan.MEDIAN, ahead)));
        lowest = Math.max(lowest, fanFoot(strip, scale, ahead));
      }
    }
    return lowest;
  }

  private static double fanFoot(StripState strip, StripScale scale, double ahead) {
    return strip.forecast() instanceof ChannelForecast.Ready ready
        ? scale.y(ready.fan().at(StripPainter.P05, ahead))
        : scale.limitY();
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

  /**
   * Where the label of the limit stands: at the left end of the ceiling, else before Now where the
   * trace has left it, else under the trace.
   */
  static Spot limit(StripState strip, StripSlot slot, double width) {
    StripScale scale = PlotView.scale(strip, slot);
    boolean leads = slot.form() == StripSlot.Form.LEADING;
    double left = leads ? DriveGeometry.CHART_LEFT + 12 : DriveGeometry.CHART_LEFT + 6;
    double usual = scale.limitY() + (leads ? -LABEL_IN_HATCH : LABEL_UNDER_CEILING);
    Trace trace = strip.trace();
    DoubleSummaryStatistics old = part(trace, 0, LABEL_MICROS);
    if (isFree(old, scale, usual)) {
      return new Spot(left, usual);
    }
    long end = trace.timeMicros(trace.size() - 1) - trace.timeMicros(0);
    if (isFree(part(trace, end - LABEL_MICROS, end), scale, usual)) {
      return new Spot(DriveGeometry.NOW - BESIDE_DROP - width, usual);
    }
    double under = scale.y(old.getMin()) + LABEL_ASCENT + LABEL_DESCENT;
    boolean hasRoom = under < slot.top() + slot.height() - LABEL_DESCENT;
    return new Spot(left, hasRoom ? under : scale.limitY() + LABEL_UNDER_CEILING);
  }

  /**
   * Left end and baseline of a label.
   *
   * @param left x
   * @param baseline y
   */
  record Spot(double left, double baseline) {}

  private static boolean isFree(DoubleSummaryStatistics part, StripScale scale, double baseline) {
    return part.getCount() == 0
        || scale.y(part.getMin()) < baseline - LABEL_ASCENT
        || scale.y(part.getMax()) > baseline + LABEL_DESCENT;
  }

  /** The part of the trace between two ages, counted from its beginning. */
  private static DoubleSummaryStatistics part(Trace trace, long fromMicros, long toMicros) {
    return IntStream.range(0, trace.size())
        .filter(point -> trace.timeMicros(point) - trace.timeMicros(0) >= fromMicros)
        .filter(point -> trace.timeMicros(point) - trace.timeMicros(0) <= toMicros)
        .mapToDouble(trace::value)
        .summaryStatistics();
  }
}
