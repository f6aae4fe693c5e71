package steadypull.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import steadypull.thermal.Belief;

/** Many draws of what both sides would have done, from which intervals are read. Immutable. */
final class Draws {
  private static final int COUNT = 600;
  private static final long SEED = 7019;

  private final Drawn likeliest;
  private final List<Drawn> draws = new ArrayList<>();

  Draws(Fitted fitted, Store store, CommonLoad load, int seconds) {
    Random random = new Random(SEED);
    Unknowns unknowns = fitted.unknowns();
    likeliest =
        Drawn.of(new CommonDrive(unknowns, fitted.at(), store, load, HeatDraw.USUAL, seconds));
    for (int i = 0; i < COUNT; i++) {
      double[] at = fitted.draw(random);
      HeatDraw heat = HeatDraw.of(random, load.source());
      draws.add(Drawn.of(new CommonDrive(unknowns, at, store, load, heat, seconds)));
    }
  }

  Drawn likeliest() {
    return likeliest;
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
