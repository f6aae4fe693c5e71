package steadypull.road.load;

import java.util.List;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.extended.ExtendedKalmanFilter;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposer;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** Goes through a trip and tells what its energy says of mass and drag. Stateless. */
final class MassFilter {
  /** What is assumed is far from known: 0.5 to 2 times of it. */
  private static final double LIGHTNESS_SHARE = 0.5;

  /** Drag areas are entered or assumed so well (estimated). */
  private static final double DRAG_SHARE = 0.3;

  /**
   * Light truck and trailer tyres run at 0.008 to 0.015 (common practice, no source); the friction
   * that is assumed inside the engine errs like another 0.002.
   */
  private static final double ROLLING_ERROR = 0.0035;

  /** A trip may begin at any height. */
  private static final double FIRST_METRES = 5000;

  private static final LUDecomposer DECOMPOSER = new LUDecomposer(1e-30);

  private MassFilter() {}

  /**
   * What is known at a trip's end.
   *
   * @param lightness the mass assumed over the mass
   * @param lightnessError its standard deviation
   * @param dragShare drag area over the one assumed, at the mass found
   * @param dragError its standard deviation
   */
  record Told(double lightness, double lightnessError, double dragShare, double dragError) {}

  /**
   * Goes through a trip.
   *
   * @param steps in the order of time, one or more with a height
   * @param assumedKilograms above 0
   * @param rolling as entered or assumed
   */
  static Told tell(List<HeadStep> steps, double assumedKilograms, double rolling) {
    ExtendedKalmanFilter<HeadObservation> filter =
        new ExtendedKalmanFilter<>(
            DECOMPOSER, new HeadProcess(assumedKilograms), begin(steps, rolling));
    ProcessEstimate last = null;
    for (HeadStep step : steps) {
      last = filter.estimationStep(new HeadObservation(step));
    }
    if (last == null) {
      throw new IllegalArgumentException("A trip has a step or more");
    }
    return told(last);
  }

  private static Told told(ProcessEstimate last) {
    RealMatrix covariance = last.getCovariance();
    double lightness = last.getState().getEntry(HeadProcess.LIGHTNESS);
    double drag = last.getState().getEntry(HeadProcess.DRAG);
    double lightnessVariance = covariance.getEntry(HeadProcess.LIGHTNESS, HeadProcess.LIGHTNESS);
    double dragVariance = covariance.getEntry(HeadProcess.DRAG, HeadProcess.DRAG);
    double both = covariance.getEntry(HeadProcess.LIGHTNESS, HeadProcess.DRAG);
    double share = drag / lightness;
    // of a quotient, to the first order
    double variance =
        (dragVariance - 2 * share * both + share * share * lightnessVariance)
            / (lightness * lightness);
    return new Told(
        lightness,
        Math.sqrt(Math.max(0, lightnessVariance)),
        share,
        Math.sqrt(Math.max(0, variance)));
  }

  private static ProcessEstimate begin(List<HeadStep> steps, double rolling) {
    double[] state = new double[HeadProcess.SIZE];
    double[] errors = new double[HeadProcess.SIZE];
    state[HeadProcess.LIGHTNESS] = 1;
    state[HeadProcess.DRAG] = 1;
    state[HeadProcess.ROLLING] = rolling;
    errors[HeadProcess.HEAD] = FIRST_METRES;
    errors[HeadProcess.RECEIVER] = HeadProcess.RECEIVER_METRES;
    errors[HeadProcess.WIND] = HeadProcess.WIND_SHARE;
    errors[HeadProcess.LIGHTNESS] = LIGHTNESS_SHARE;
    errors[HeadProcess.DRAG] = DRAG_SHARE;
    errors[HeadProcess.ROLLING] = ROLLING_ERROR;
    RealMatrix covariance = MatrixUtils.createRealMatrix(HeadProcess.SIZE, HeadProcess.SIZE);
    for (int i = 0; i < errors.length; i++) {
      covariance.setEntry(i, i, errors[i] * errors[i]);
    }
    HeadStep first = steps.getFirst();
    return new ProcessEstimate(
        first.seconds() - first.span(), new ArrayRealVector(state), covariance);
  }
}
