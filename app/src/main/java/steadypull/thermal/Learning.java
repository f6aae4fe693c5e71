package steadypull.thermal;

/**
 * Whether enough has been seen for a forecast. A minute with the engine running lets the filters
 * find where each temperature stands and which way it goes, and twenty seconds of it under load
 * show what load does to them; before that a forecast would be the prior's, with bands too wide to
 * act on. No longer: a pull on a dynamometer reaches its limit within two minutes. Pipeline thread
 * only.
 */
final class Learning {
  private static final double RUNNING_SECONDS = 60;
  private static final double LOADED_SECONDS = 20;
  private static final double RUNNING_RPM = 400;
  private static final double LOADED_KILOWATTS = 20;

  private double runningSeconds;
  private double loadedSeconds;

  /** Takes the load of the last seconds. */
  void accept(Load load, double seconds) {
    if (load.engineRpm() > RUNNING_RPM) {
      runningSeconds += seconds;
    }
    if (load.kilowatts() > LOADED_KILOWATTS) {
      loadedSeconds += seconds;
    }
  }

  boolean isEnough() {
    return runningSeconds >= RUNNING_SECONDS && loadedSeconds >= LOADED_SECONDS;
  }
}
