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

  /** Temperature, disturbance, six parameters at most, and the disturbance to come. */
  private static final int DIMENSIONS_PER_STORE = 9;

  private static final int DISTURBANCE_TO_COME = DIMENSIONS_PER_STORE - 1;

  private final DrawSet draws = new DrawSet(DRAWS, 1 + Store.COUNT * DIMENSIONS_PER_STORE);
  private final double[] secondsAhead = HorizonGrid.secondsAhead();
  private final double[] untilSettled = HorizonGrid.untilSettled();

  /** One store of one draw, as it runs ahead. */
  private record Runner(
      int store, HeatBalance balance, double[] parameters, double disturbance, double toCome) {}

  /**
   * The load that a draw sees at a moment ahead.
   *
   * <p>Given the seconds ahead and the draw's standard normal number.
   */
  interface LoadAhead {
    Load at(double secondsAhead, double normal);
  }

  double[] secondsAhead() {
    return secondsAhead;
  }

  /** Temperatures by store, then draw, then point of the grid; only of the stores given. */
  double[][][] run(Collection<ChannelEstimate> estimates, double seconds, LoadAhead loadAhead) {
    double[][][] celsius = new double[Store.COUNT][DRAWS][secondsAhead.length];
    List<double[][]> spreads = estimates.stream().map(ChannelEstimate::spread).toList();
    for (int draw = 0; draw < DRAWS; draw++) {
      double[] now = new double[Store.COUNT];
      Runner[] runners = new Runner[estimates.size()];
      int index = 0;
      for (ChannelEstimate estimate : estimates) {
        runners[index] = runner(estimate, spreads.get(index), draw, seconds, now);
        index++;
      }
      runDraw(runners, now, draw, loadAhead, celsius);
    }
    return celsius;
  }

  /** Where every store settles if the load went on for ever, by store. */
  double[] settled(Collection<ChannelEstimate> estimates, Load load) {
    double[] now = new double[Store.COUNT];
    Runner[] runners =
        estimates.stream().map(estimate -> middle(estimate, now)).toArray(Runner[]::new);
    for (double step : untilSettled) {
      for (Runner runner : runners) {
        advance(runner, now, load, 0, step);
      }
    }
    return now;
  }

  private void runDraw(
      Runner[] runners, double[] now, int draw, LoadAhead loadAhead, double[][][] celsius) {
    double normal = draws.at(draw, LOAD_DIMENSION);
    record(runners, now, draw, 0, celsius);
    for (int point = 1; point < secondsAhead.length; point++) {
      double from = secondsAhead[point - 1];
      double step = secondsAhead[point] - from;
      double middle = from + step / 2;
      Load load = loadAhead.at(middle, normal);
      for (Runner runner : runners) {
        advance(runner, now, load, disturbance(runner, middle), step);
      }
      record(runners, now, draw, point, celsius);
    }
  }

  private static void advance(
      Runner runner, double[] now, Load load, double disturbance, double step) {
    now[runner.store()] =
        runner
            .balance()
            .step(now[runner.store()], runner.parameters(), load, now, disturbance, step);
  }

  private static void record(
      Runner[] runners, double[] now, int draw, int point, double[][][] celsius) {
    for (Runner runner : runners) {
      celsius[runner.store()][draw][point] = now[runner.store()];
    }
  }

  private static double disturbance(Runner runner, double secondsAhead) {
    double kept = Math.exp(-secondsAhead / StoreProcess.DISTURBANCE_SECONDS);
    return runner.disturbance() * kept + runner.toCome() * Math.sqrt(1 - kept * kept);
  }

  private Runner runner(
      ChannelEstimate estimate, double[][] spread, int draw, double seconds, double[] now) {
    int store = estimate.store().ordinal();
    int firstDimension = 1 + store * DIMENSIONS_PER_STORE;
    double[] state = estimate.state();
    double measuredCelsius = state[StoreProcess.CELSIUS];
    for (int row = 0; row < spread.length; row++) {
      for (int column = 0; column < spread[row].length; column++) {
        state[row] += spread[row][column] * draws.at(draw, firstDimension + column);
      }
    }
    now[store] = estimate.isMeasured(seconds) ? measuredCelsius : state[StoreProcess.CELSIUS];
    return new Runner(
        store,
        estimate.balance(),
        estimate.physical(state),
        state[StoreProcess.DISTURBANCE],
        estimate.balance().disturbance() * draws.at(draw, firstDimension + DISTURBANCE_TO_COME));
  }

  private static Runner middle(ChannelEstimate estimate, double[] now) {
    double[] state = estimate.state();
    int store = estimate.store().ordinal();
    now[store] = state[StoreProcess.CELSIUS];
    return new Runner(store, estimate.balance(), estimate.physical(state), 0, 0);
  }
}
