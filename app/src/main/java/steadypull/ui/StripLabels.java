package steadypull.ui;

import java.util.stream.IntStream;
import steadypull.drive.StripState;
import steadypull.drive.Trace;
import steadypull.thermal.Fan;

/** Where the labels inside a chart find room beside the lines that are drawn there. */
final class StripLabels {
  private static final double UNDER_LINE = 30;
  private static final double OVER_LINE = 14;
  private static final double FOOT = 10;
  private static final long LABEL_MICROS = 60_000_000;
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

  /** Whether the label of the limit may stand in the hatch: the oldest trace must not be there. */
  static boolean limitFitsHatch(StripState strip) {
    Trace trace = strip.trace();
    if (strip.limit().isEmpty() || trace.size() == 0) {
      return true;
    }
    double ceiling = strip.limit().get().celsius() - CLEAR_CELSIUS;
    long until = trace.timeMicros(0) + LABEL_MICROS;
    return IntStream.range(0, trace.size())
        .filter(point -> trace.timeMicros(point) <= until)
        .allMatch(point -> trace.value(point) < ceiling);
  }
}
