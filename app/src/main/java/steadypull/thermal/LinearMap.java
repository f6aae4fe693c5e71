package steadypull.thermal;

/**
 * A learnt straight relation y = c0 + c1 * power + c2 * engine speed, kept with its covariance by
 * recursive least squares (the Kalman filter of a slowly wandering constant; Simon, Optimal State
 * Estimation, 2006, sections 3.3 and 5.1). Pipeline thread only.
 */
final class LinearMap {
  private static final int SIZE = 3;

  /** In an hour a coefficient may wander by this share of its prior spread. */
  private static final double WANDER_PER_HOUR = 0.5;

  private final double[] coefficients;
  private final double[][] covariance = new double[SIZE][SIZE];
  private final double[] wanderPerSecond = new double[SIZE];
  private final double noiseVariance;

  /**
   * Starts from a prior.
   *
   * @param usual constant, per 100 kW, per 1000 r/min
   * @param spread standard deviation of each
   * @param noise standard deviation of one observation
   */
  LinearMap(double[] usual, double[] spread, double noise) {
    coefficients = usual.clone();
    noiseVariance = noise * noise;
    for (int i = 0; i < SIZE; i++) {
      covariance[i][i] = spread[i] * spread[i];
      wanderPerSecond[i] = covariance[i][i] * WANDER_PER_HOUR * WANDER_PER_HOUR / 3600;
    }
  }

  /** Learns from one observation that stands for the given number of seconds. */
  void learn(double kilowatts, double engineRpm, double observed, double seconds) {
    double[] features = features(kilowatts, engineRpm);
    double[] gain = new double[SIZE];
    double variance = noiseVariance / Math.max(1e-3, seconds);
    for (int i = 0; i < SIZE; i++) {
      covariance[i][i] += wanderPerSecond[i] * seconds;
    }
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        gain[i] += covariance[i][j] * features[j];
      }
    }
    double innovationVariance = variance;
    for (int i = 0; i < SIZE; i++) {
      innovationVariance += features[i] * gain[i];
    }
    double surprise = observed - at(kilowatts, engineRpm);
    for (int i = 0; i < SIZE; i++) {
      coefficients[i] += gain[i] / innovationVariance * surprise;
    }
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        covariance[i][j] -= gain[i] * gain[j] / innovationVariance;
      }
    }
  }

  /** The value at a power and engine speed. */
  double at(double kilowatts, double engineRpm) {
    return coefficients[0] + coefficients[1] * kilowatts / 100 + coefficients[2] * engineRpm / 1000;
  }

  private static double[] features(double kilowatts, double engineRpm) {
    return new double[] {1, kilowatts / 100, engineRpm / 1000};
  }
}
