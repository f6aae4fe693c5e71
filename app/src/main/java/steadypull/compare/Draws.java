package steadypull.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import steadypull.thermal.Belief;

/** Many draws of what both sides would have done, from which intervals are read. Immutable. */
final class Draws {
  private static final int COUNT = 600;
  private static final long SEED = 7019;

  /** Bounds of load and outside air are sought for this many of the draws. */
  private static final int SOUGHT = 120;

  private final Fitted fitted;
  private final Store store;
  private final CommonLoad load;
  private final List<Drawn> draws = new ArrayList<>();
  private final List<Drawing> drawings = new ArrayList<>();

  /** Everything unknown in one draw. */
  private static final class Drawing {
    private final double[] at;
    private final HeatDraw heat;

    Drawing(double[] at, HeatDraw heat) {
      this.at = at;
      this.heat = heat;
    }
  }

  Draws(Fitted fitted, Store store, CommonLoad load, int seconds) {
    Random random = new Random(SEED);
    Unknowns unknowns = fitted.unknowns();
    this.fitted = fitted;
    this.store = store;
    this.load = load;
    for (int i = 0; i < COUNT; i++) {
      double[] at = fitted.draw(random);
      HeatDraw heat = HeatDraw.of(random, load.source());
      draws.add(Drawn.of(new CommonDrive(unknowns, at, store, load, heat, seconds)));
      drawings.add(new Drawing(at, heat));
    }
  }

  /** The most probable course of a side, however long, degC. */
  double[] likeliest(Side side, int seconds) {
    return new CommonDrive(fitted.unknowns(), fitted.at(), store, load, HeatDraw.USUAL, seconds)
        .course(side, side);
  }

  /** The interval of a figure that is sought anew in some of the draws; NaN are left aside. */
  Optional<Belief> sought(ToDoubleFunction<UnderLoad> figure) {
    double[] sorted =
        drawings.stream()
            .limit(SOUGHT)
            .mapToDouble(each -> figure.applyAsDouble(other -> under(each, other)))
            .filter(value -> !Double.isNaN(value))
            .sorted()
            .toArray();
    return sorted.length < SOUGHT / 2
        ? Optional.empty()
        : Optional.of(new Belief(at(sorted, 0.05), at(sorted, 0.5), at(sorted, 0.95)));
  }

  private CommonDrive under(Drawing drawing, CommonLoad other) {
    return new CommonDrive(fitted.unknowns(), drawing.at, store, other, drawing.heat, 2);
  }

  /** One draw's unknowns under any load. */
  interface UnderLoad {
    CommonDrive with(CommonLoad other);
  }

  /** The interval of nine in ten of a figure. */
  Belief belief(ToDoubleFunction<Drawn> figure) {
    double[] sorted = sorted(figure);
    return new Belief(at(sorted, 0.05), at(sorted, 0.5), at(sorted, 0.95));
  }

  /** The value under which a share of the draws lies. */
  double quantile(ToDoubleFunction<Drawn> figure, double share) {
    return at(sorted(figure), share);
  }

  private double[] sorted(ToDoubleFunction<Drawn> figure) {
    double[] sorted = draws.stream().mapToDouble(figure).toArray();
    Arrays.sort(sorted);
    return sorted;
  }

  /** A line with its band. */
  Course course(ToSecond figure, int seconds) {
    double[] low = new double[seconds];
    double[] middle = new double[seconds];
    double[] high = new double[seconds];
    for (int second = 0; second < seconds; second++) {
      int each = second;
      Belief belief = belief(drawn -> figure.of(drawn).applyAsDouble(each));
      low[second] = belief.low();
      middle[second] = belief.middle();
      high[second] = belief.high();
    }
    return new Course(low, middle, high);
  }

  /** A figure of a draw at each second. */
  interface ToSecond {
    IntToDoubleFunction of(Drawn drawn);
  }

  private static double at(double[] sorted, double level) {
    double place = level * (sorted.length - 1);
    int under = (int) place;
    int over = Math.min(under + 1, sorted.length - 1);
    return sorted[under] + (place - under) * (sorted[over] - sorted[under]);
  }
}
