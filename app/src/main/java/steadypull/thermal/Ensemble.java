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

  private static final int DISTURBANCE_TO_COME = DIMENSIONS_PER_STORE - 1;

  private static final int FIRST_OF_ROAD = 1 + Store.COUNT * DIMENSIONS_PER_STORE;

  /** Numbers of a draw that belong to the road ahead. */
  static final int ROAD_DIMENSIONS = 8;

  private static final int AIR_CONDITIONING_DIMENSION = FIRST_OF_ROAD + ROAD_DIMENSIONS;

  private final DrawSet draws = new DrawSet(DRAWS, AIR_CONDITIONING_DIMENSION + 1);
  private final double[] secondsAhead = HorizonGrid.secondsAhead();
  private final double[] untilSettled = HorizonGrid.untilSettled();
  private final double[] kept = new double[secondsAhead.length];
  private final double[] grown = new double[secondsAhead.length];

  Ensemble() {
    double[] middles = stepMiddles();
    for (int point = 1; point < secondsAhead.length; point++) {
      kept[point] = Math.exp(-middles[point] / StoreProcess.DISTURBANCE_SECONDS);
      grown[point] = Math.sqrt(1 - kept[point] * kept[point]);
    }
  }

  /** The load that a draw sees during the step that ends at a point of the grid. */
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

  /**
   * Runs the stores given ahead.
   *
   * @param seconds now
   * @param load the load in the middle of the draws, for where they settle
   * @param loadAhead the load of every draw
   */
  Outlook outlook(
      Collection<ChannelEstimate> estimates, double seconds, Load load, LoadAhead loadAhead) {
    return new Outlook(
        courses(estimates, seconds, loadAhead, secondsAhead.length), settled(estimates, load));
  }

  /**
   * The courses alone, only as far as they are asked for: degC by store, draw and point.
   *
   * @param seconds now
   * @param points of the horizon grid, the first, 0, among them
   */
  double[][][] courses(
      Collection<ChannelEstimate> estimates, double seconds, LoadAhead loadAhead, int points) {
    double[][][] celsius = new double[Store.COUNT][DRAWS][points];
    List<Start> starts = estimates.stream().map(each -> new Start(each, seconds)).toList();
    for (int draw = 0; draw < DRAWS; draw++) {
      double[] now = new double[Store.COUNT];
      StoreRunner[] runners = new StoreRunner[starts.size()];
      for (int index = 0; index < runners.length; index++) {
        runners[index] = runner(starts.get(index), draw, now);
      }
      runDraw(runners, now, draw, loadAhead, celsius);
    }
    return celsius;
  }

  /** Where every store settles if the load went on for ever, by store. */
  private double[] settled(Collection<ChannelEstimate> estimates, Load load) {
    double[] now = new double[Store.COUNT];
    StoreRunner[] runners =
        estimates.stream().map(estimate -> middle(estimate, now)).toArray(StoreRunner[]::new);
    for (double step : untilSettled) {
      for (StoreRunner runner : runners) {
        runner.advance(now, load, 0, 0, step);
      }
    }
    return now;
  }

  private void runDraw(
      StoreRunner[] runners, double[] now, int draw, LoadAhead loadAhead, double[][][] celsius) {
    record(runners, now, draw, 0, celsius);
    int points = celsius[0][draw].length;
    for (int point = 1; point < points; point++) {
      double step = secondsAhead[point] - secondsAhead[point - 1];
      Load load = loadAhead.at(draw, point);
      for (StoreRunner runner : runners) {
        runner.advance(now, load, kept[point], grown[point], step);
      }
      record(runners, now, draw, point, celsius);
    }
  }

  private static void record(
      StoreRunner[] runners, double[] now, int draw, int point, double[][][] celsius) {
    for (StoreRunner runner : runners) {
      celsius[runner.index()][draw][point] = now[runner.index()];
    }
  }

  /** What all draws of a store begin with. */
  private static final class Start {
    private final ChannelEstimate estimate;
    private final double[] state;
    private final double[][] spread;
    private final boolean isMeasured;
    private final double disturbance;

    Start(ChannelEstimate estimate, double seconds) {
      this.estimate = estimate;
      state = estimate.state();
      spread = estimate.spread();
      isMeasured = estimate.isMeasured(seconds);
      disturbance = estimate.disturbance(seconds);
    }
  }

  private StoreRunner runner(Start start, int draw, double[] now) {
    ChannelEstimate estimate = start.estimate;
    double[][] spread = start.spread;
    int store = estimate.store().index();
    int firstDimension = 1 + store * DIMENSIONS_PER_STORE;
    double[] state = start.state.clone();
    double shown = state[StoreProcess.SHOWN];
    for (int row = 0; row < spread.length; row++) {
      for (int column = 0; column < spread[row].length; column++) {
        state[row] += spread[row][column] * draws.at(draw, firstDimension + column);
      }
    }
    now[store] = start.isMeasured ? shown : state[StoreProcess.SHOWN];
    double behind = state[StoreProcess.CELSIUS] - state[StoreProcess.SHOWN];
    return new StoreRunner(
        estimate.store(),
        estimate.balance(),
        estimate.physical(state),
        now[store] + behind,
        state[StoreProcess.DISTURBANCE],
        start.disturbance * draws.at(draw, firstDimension + DISTURBANCE_TO_COME));
  }

  private static StoreRunner middle(ChannelEstimate estimate, double[] now) {
    double[] state = estimate.state();
    int store = estimate.store().index();
    now[store] = state[StoreProcess.SHOWN];
    return new StoreRunner(
        estimate.store(),
        estimate.balance(),
        estimate.physical(state),
        state[StoreProcess.CELSIUS],
        0,
        0);
  }
}
