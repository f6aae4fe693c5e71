package steadypull.thermal;

/**
 * Where the draws of one store begin: made once a moment, run ahead under any load. Its arrays go
 * by draw and are not to be written to.
 */
final class StoreBeginning {
  private final Store store;
  private final HeatBalance balance;
  private final double[][] parameters;
  private final double[] shown;
  private final double[] celsius;
  private final double[] disturbance;
  private final double[] disturbanceToCome;
  private final double[] sensorLagSeconds;

  /** As many draws of a store as told, none of them set yet. */
  private StoreBeginning(ChannelEstimate estimate, int draws) {
    store = estimate.store();
    balance = estimate.balance();
    parameters = new double[draws][];
    shown = new double[draws];
    celsius = new double[draws];
    disturbance = new double[draws];
    disturbanceToCome = new double[draws];
    sensorLagSeconds = new double[draws];
  }

  /** The most probable state, as the only draw; no other disturbance grows in its place. */
  static StoreBeginning middle(ChannelEstimate estimate) {
    StoreBeginning middle = new StoreBeginning(estimate, 1);
    double[] state = estimate.state();
    middle.set(0, estimate.physical(state), state[StoreProcess.SHOWN], state);
    return middle;
  }

  /**
   * States as they may be, each draw as likely as the next.
   *
   * @param seconds now
   * @param draws standard normal numbers
   * @param first the first of a draw's numbers that belongs to this store; the one behind those of
   *     the state is for the disturbance to come
   */
  static StoreBeginning of(ChannelEstimate estimate, double seconds, DrawSet draws, int first) {
    StoreBeginning drawn = new StoreBeginning(estimate, draws.count());
    double[] middle = estimate.state();
    double[][] spread = estimate.spread();
    boolean isMeasured = estimate.isMeasured(seconds);
    double toCome = estimate.disturbance(seconds);
    for (int draw = 0; draw < draws.count(); draw++) {
      double[] state = middle.clone();
      for (int row = 0; row < spread.length; row++) {
        for (int column = 0; column < spread[row].length; column++) {
          state[row] += spread[row][column] * draws.at(draw, first + column);
        }
      }
      double shown = isMeasured ? middle[StoreProcess.SHOWN] : state[StoreProcess.SHOWN];
      drawn.set(draw, estimate.physical(state), shown, state);
      drawn.disturbanceToCome[draw] = toCome * draws.at(draw, first + Ensemble.DISTURBANCE_TO_COME);
    }
    return drawn;
  }

  private void set(int draw, double[] physical, double nowShown, double[] state) {
    parameters[draw] = physical;
    shown[draw] = nowShown;
    celsius[draw] = nowShown + (state[StoreProcess.CELSIUS] - state[StoreProcess.SHOWN]);
    disturbance[draw] = state[StoreProcess.DISTURBANCE];
    sensorLagSeconds[draw] = balance.sensorLagSeconds(physical);
  }

  Store store() {
    return store;
  }

  HeatBalance balance() {
    return balance;
  }

  /** Physical values, by draw and in the order of the balance's parameters. */
  double[][] parameters() {
    return parameters;
  }

  /** What the sensor shows, degC. */
  double[] shown() {
    return shown;
  }

  /** The store itself, which its sensor may not show yet, degC. */
  double[] celsius() {
    return celsius;
  }

  /** K/s that acts now and dies away. */
  double[] disturbance() {
    return disturbance;
  }

  /** K/s that grows in its place. */
  double[] disturbanceToCome() {
    return disturbanceToCome;
  }

  /** How late the sensor is, seconds, 0 or more. */
  double[] sensorLagSeconds() {
    return sensorLagSeconds;
  }
}
