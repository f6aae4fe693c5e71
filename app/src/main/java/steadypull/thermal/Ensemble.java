package steadypull.thermal;

import java.util.Collection;
import java.util.List;

/**
 * Runs all stores ahead together, once per draw of parameters, disturbances and load. The spread of
 * the draws is the band. Deterministic; pipeline thread only.
 */
final class Ensemble {
  private static final int DRAWS = 32;
  private static final int LOAD_DIMENSION = 0;

  /** Temperature, disturbance, what is shown, seven parameters at most, the disturbance to come. */
  private static final int DIMENSIONS_PER_STORE = 11;

  /** Place of the disturbance to come among the numbers of a store. */
  static final int DISTURBANCE_TO_COME = DIMENSIONS_PER_STORE - 1;

  private static final int FIRST_OF_ROAD = 1 + Store.COUNT * DIMENSIONS_PER_STORE;

  /** Numbers of a draw that belong to the road ahead. */
  static final int ROAD_DIMENSIONS = 8;

  private static final int AIR_CONDITIONING_DIMENSION = FIRST_OF_ROAD + ROAD_DIMENSIONS;

  private final DrawSet draws = new DrawSet(DRAWS, AIR_CONDITIONING_DIMENSION + 1);
  private final double[] secondsAhead = HorizonGrid.secondsAhead();
  private final double[] untilSettled = HorizonGrid.untilSettled();
  private final double[] stepSeconds = stepSeconds();
  private final double[] kept = new double[secondsAhead.length];
  private final double[] grown = new double[secondsAhead.length];

  Ensemble() {
    double[] middles = stepMiddles();
    for (int point = 1; point < secondsAhead.length; point++) {
      kept[point] = Math.exp(-middles[point] / StoreProcess.DISTURBANCE_SECONDS);
      grown[point] = Math.sqrt(1 - kept[point] * kept[point]);
    }
  }

  /**
   * The load that a draw sees during the step that ends at a point of the grid. Asked once for each
   * draw, in their order, before the next point, from the first on.
   */
  interface LoadAhead {
    /**
     * The load.
     *
     * @param draw which draw
     * @param point index into the horizon grid, 1 or more
     */
    Load at(int draw, int point);
  }

  /** Seconds ahead of the middle of every step, by the point at which it ends; the first is 0. */
  double[] stepMiddles() {
    double[] middles = new double[secondsAhead.length];
    for (int point = 1; point < middles.length; point++) {
      middles[point] = (secondsAhead[point - 1] + secondsAhead[point]) / 2;
    }
    return middles;
  }

  /** How long every step is, seconds, by the point at which it ends; the first is 0. */
  double[] stepSeconds() {
    double[] seconds = new double[secondsAhead.length];
    for (int point = 1; point < seconds.length; point++) {
      seconds[point] = secondsAhead[point] - secondsAhead[point - 1];
    }
    return seconds;
  }

  /** How many draws there are. */
  int count() {
    return DRAWS;
  }

  /** The standard normal number of a draw for the load. */
  double loadNormal(int draw) {
    return draws.at(draw, LOAD_DIMENSION);
  }

  /** One of the standard normal numbers of a draw for the road ahead. */
  double roadNormal(int draw, int dimension) {
    return draws.at(draw, FIRST_OF_ROAD + dimension);
  }

  /** The standard normal number of a draw for what air conditioning takes. */
  double airConditioningNormal(int draw) {
    return draws.at(draw, AIR_CONDITIONING_DIMENSION);
  }

  double[] secondsAhead() {
    return secondsAhead;
  }

  /** Where all draws of the stores given begin now; good until the stores move on. */
  Beginnings begin(Collection<ChannelEstimate> estimates, double seconds) {
    return new Beginnings(
        estimates.stream().map(each -> begin(each, seconds)).toList(),
        estimates.stream().map(StoreBeginning::middle).toList());
  }

  private StoreBeginning begin(ChannelEstimate estimate, double seconds) {
    int first = 1 + estimate.store().index() * DIMENSIONS_PER_STORE;
    return StoreBeginning.of(estimate, seconds, draws, first);
  }

  /**
   * The most probable course alone, only as far as it is asked for: degC by store, then by the one
   * draw, then by point.
   *
   * @param points of the horizon grid, the first, 0, among them
   */
  double[][][] middle(Beginnings begin, Load load, int points) {
    return courses(begin.middles(), 1, (_, _) -> load, points);
  }

  /**
   * The courses of draws, as far as they are asked for: degC by store, draw and point.
   *
   * @param loadAhead the load of every draw
   * @param points of the horizon grid, the first, 0, among them
   */
  private double[][][] courses(
      List<StoreBeginning> begin, int draws, LoadAhead loadAhead, int points) {
    double[][][] celsius = new double[Store.COUNT][draws][points];
    double[][] shown = shown(begin, draws);
    List<StoreRunner> runners = begin.stream().map(StoreRunner::new).toList();
    Load[] loads = new Load[draws];
    record(runners, shown, 0, celsius);
    for (int point = 1; point < points; point++) {
      for (int draw = 0; draw < draws; draw++) {
        loads[draw] = loadAhead.at(draw, point);
      }
      for (StoreRunner runner : runners) {
        runner.advance(shown, loads, kept[point], grown[point], stepSeconds[point]);
      }
      record(runners, shown, point, celsius);
    }
    return celsius;
  }

  /** All courses to the end of the grid, and where the middle one settles under a load. */
  Outlook outlook(Beginnings begin, Load load, LoadAhead loadAhead) {
    return new Outlook(
        courses(begin.draws(), DRAWS, loadAhead, secondsAhead.length),
        settled(begin.middles(), load));
  }

  /** Where every store settles if the load went on for ever, by store. */
  private double[] settled(List<StoreBeginning> begin, Load load) {
    double[][] shown = shown(begin, 1);
    List<StoreRunner> runners = begin.stream().map(StoreRunner::new).toList();
    Load[] loads = {load};
    for (double step : untilSettled) {
      for (StoreRunner runner : runners) {
        runner.advance(shown, loads, 0, 0, step);
      }
    }
    return shown[0];
  }

  /** What every sensor shows at the beginning, by draw and store. */
  private static double[][] shown(List<StoreBeginning> begin, int draws) {
    double[][] shown = new double[draws][Store.COUNT];
    for (StoreBeginning store : begin) {
      for (int draw = 0; draw < draws; draw++) {
        shown[draw][store.store().index()] = store.shown()[draw];
      }
    }
    return shown;
  }

  private static void record(
      List<StoreRunner> runners, double[][] shown, int point, double[][][] celsius) {
    for (StoreRunner runner : runners) {
      double[][] courses = celsius[runner.index()];
      for (int draw = 0; draw < courses.length; draw++) {
        courses[draw][point] = shown[draw][runner.index()];
      }
    }
  }
}
