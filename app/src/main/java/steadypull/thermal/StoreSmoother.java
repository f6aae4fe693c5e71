package steadypull.thermal;

import java.util.List;
import org.hipparchus.filtering.kalman.KalmanSmoother;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.extended.ExtendedKalmanFilter;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposer;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposer;

/**
 * Looks at a store's whole trip from its end: every moment then has what came after it behind it
 * too (fixed-interval smoothing: Rauch, Tung and Striebel, Maximum likelihood estimates of linear
 * dynamic systems, AIAA Journal 3, 1965). A second run starts from the parameters that the first
 * one found, since the first may have begun far from them, where its slopes are others. Stateless.
 */
final class StoreSmoother {
  private static final CholeskyDecomposer INNOVATIONS = new CholeskyDecomposer(1e-8, 1e-14);

  private StoreSmoother() {}

  /**
   * State and covariance in the middle of a trip.
   *
   * @param start what is believed before the first moment
   * @param moments in their order, one or more
   */
  static ProcessEstimate middle(
      StoreProcess process, ProcessEstimate start, List<Observation> moments) {
    ProcessEstimate first = run(process, start, moments);
    RealVector state = start.getState().copy();
    for (int i = StoreProcess.FIRST_COORDINATE; i < state.getDimension(); i++) {
      state.setEntry(i, first.getState().getEntry(i));
    }
    return run(
        process,
        new ProcessEstimate(
            start.getTime(), new ArrayRealVector(state.toArray()), start.getCovariance()),
        moments);
  }

  private static ProcessEstimate run(
      StoreProcess process, ProcessEstimate start, List<Observation> moments) {
    // What a sensor without lag shows is the store itself, so that covariances are singular; their
    // pseudo-inverse is the right one.
    KalmanSmoother smoother = new KalmanSmoother(new SingularValueDecomposer());
    ExtendedKalmanFilter<Observation> filter =
        new ExtendedKalmanFilter<>(INNOVATIONS, process, start);
    filter.setObserver(smoother);
    moments.forEach(filter::estimationStep);
    List<ProcessEstimate> smoothed = smoother.backwardsSmooth();
    return smoothed.get(smoothed.size() / 2);
  }
}
