package steadypull.thermal;

/** One store of one draw, as it runs ahead. Used by one thread. */
final class StoreRunner {
  private final int index;
  private final HeatBalance balance;
  private final double[] parameters;
  private final double disturbance;
  private final double disturbanceToCome;
  private double behindSensor;

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
    behindSensor = balance.step(behindSensor, parameters, load, celsius, added, seconds);
    celsius[index] =
        StoreProcess.shown(
            celsius[index], behindSensor, balance.sensorLagSeconds(parameters), seconds);
  }
}
