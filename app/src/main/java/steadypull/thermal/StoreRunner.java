package steadypull.thermal;

/** One store of one draw, as it runs ahead. Used by one thread. */
final class StoreRunner {
  private final int index;
  private final HeatBalance balance;
  private final double[] parameters;
  private final double disturbance;
  private final double disturbanceToCome;
  private final double sensorLagSeconds;
  private double behindSensor;

  // Most steps are as long as the one before, and most stores return as strongly.
  private double lastSeconds = -1;
  private double keptBySensor;
  private double lastRelaxation = -1;
  private double shareOfRate;

  /**
   * Keeps the parameters given.
   *
   * @param store which store
   * @param balance its physics
   * @param parameters physical values
   * @param celsius of the store itself, which its sensor may not show yet
   * @param disturbance K/s that acts now and dies away
   * @param disturbanceToCome K/s that grows in its place
   */
  StoreRunner(
      Store store,
      HeatBalance balance,
      double[] parameters,
      double celsius,
      double disturbance,
      double disturbanceToCome) {
    this.index = store.index();
    this.balance = balance;
    this.parameters = parameters;
    this.sensorLagSeconds = balance.sensorLagSeconds(parameters);
    this.behindSensor = celsius;
    this.disturbance = disturbance;
    this.disturbanceToCome = disturbanceToCome;
  }

  /** Where the store stands in arrays of all stores. */
  int index() {
    return index;
  }

  /**
   * Moves this store and what its sensor shows by one step.
   *
   * @param celsius degC that the sensor of every store shows, by {@link Store#index()}; this
   *     store's is written
   * @param load what acts during the step
   * @param kept share of the present disturbance that is left by then, 0 to 1
   * @param grown share of the disturbance to come that is there by then, 0 to 1
   * @param seconds length of the step
   */
  void advance(double[] celsius, Load load, double kept, double grown, double seconds) {
    double added = disturbance * kept + disturbanceToCome * grown;
    double rate = balance.kelvinPerSecond(behindSensor, parameters, load, celsius);
    double relaxation =
        balance.returnPerSecond(behindSensor, rate, parameters, load, celsius) * seconds;
    if (relaxation != lastRelaxation) {
      lastRelaxation = relaxation;
      shareOfRate = HeatBalance.shareOfRate(relaxation);
    }
    behindSensor += (rate + added) * shareOfRate * seconds;
    celsius[index] = shown(celsius[index], seconds);
  }

  private double shown(double before, double seconds) {
    if (sensorLagSeconds == 0) {
      return behindSensor;
    }
    if (seconds != lastSeconds) {
      lastSeconds = seconds;
      keptBySensor = Math.exp(-seconds / sensorLagSeconds);
    }
    return behindSensor + (before - behindSensor) * keptBySensor;
  }
}
