package steadypull.road.grade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.hipparchus.filtering.kalman.KalmanSmoother;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.extended.ExtendedKalmanFilter;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposer;
import org.hipparchus.linear.MatrixUtils;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;

/**
 * The line that a vehicle drove, from its receiver's fixes: reflections are left out, short
 * stretches without a fix are bridged. Stateless.
 */
final class PlaceSmoother {
  private static final int PIECE_SECONDS = 1500;
  private static final int AROUND_SECONDS = 120;

  /** What is new in each second of a usual receiver's error, m (estimated). */
  private static final double FIX_METRES = 2;

  /** A place that is less certain is none. */
  private static final double LARGEST_ERROR_METRES = 15;

  private static final double FIRST_SPEED_ERROR = 30;
  private static final LUDecomposer DECOMPOSER = new LUDecomposer(1e-30);

  private PlaceSmoother() {}

  /**
   * The places of an unbroken drive.
   *
   * @param seconds in the order of time
   * @param told for each second the fix that came in it, if one did
   * @return one for each second
   */
  static List<Optional<PassPoint.Place>> smooth(
      List<RoadSecond> seconds, List<Optional<PositionFix>> told) {
    List<Optional<PositionFix>> fixes = FixScreen.believable(seconds, told);
    List<Optional<PassPoint.Place>> places =
        new ArrayList<>(Collections.nCopies(seconds.size(), Optional.empty()));
    double[] wander = ReceiverWander.metres(seconds, fixes);
    for (int from = 0; from < seconds.size(); from += PIECE_SECONDS) {
      int to = Math.min(seconds.size(), from + PIECE_SECONDS);
      piece(
          seconds,
          fixes,
          wander,
          Math.max(0, from - AROUND_SECONDS),
          Math.min(seconds.size(), to + AROUND_SECONDS),
          from,
          to,
          places);
    }
    return places;
  }

  private static void piece(
      List<RoadSecond> seconds,
      List<Optional<PositionFix>> fixes,
      double[] wander,
      int begin,
      int end,
      int from,
      int to,
      List<Optional<PassPoint.Place>> places) {
    int first = begin;
    while (first < end && fixes.get(first).isEmpty()) {
      first++;
    }
    if (first == end) {
      return;
    }
    PositionFix origin = fixes.get(first).orElseThrow();
    FlatGround ground = FlatGround.around(origin.latitudeDegrees(), origin.longitudeDegrees());
    List<ProcessEstimate> steps = steps(seconds, fixes, wander, first, end, ground);
    for (int i = Math.max(first, from); i < to; i++) {
      places.set(i, place(steps.get(i - first), wander[i], ground));
    }
  }

  private static List<ProcessEstimate> steps(
      List<RoadSecond> seconds,
      List<Optional<PositionFix>> fixes,
      double[] wander,
      int first,
      int end,
      FlatGround ground) {
    ProcessEstimate begin = begin(seconds.get(first).seconds(), wander[first]);
    if (first + 1 == end) {
      return List.of(begin); // a fix in the last second alone: there is nothing to smooth
    }
    KalmanSmoother smoother = new KalmanSmoother(DECOMPOSER);
    ExtendedKalmanFilter<PlaceObservation> filter =
        new ExtendedKalmanFilter<>(DECOMPOSER, new PlaceProcess(), begin);
    filter.setObserver(smoother);
    for (int i = first + 1; i < end; i++) {
      double time = seconds.get(i).seconds();
      double error = FIX_METRES * Math.max(1, wander[i] / ReceiverWander.USUAL_METRES);
      filter.estimationStep(
          fixes
              .get(i)
              .map(fix -> ground.spot(fix.latitudeDegrees(), fix.longitudeDegrees()))
              .map(spot -> PlaceObservation.fixed(time, spot, error))
              .orElse(PlaceObservation.none(time)));
    }
    return List.copyOf(smoother.backwardsSmooth()); // not the linked list, which is asked by number
  }

  private static ProcessEstimate begin(double seconds, double wanderMetres) {
    double place = wanderMetres * wanderMetres;
    double speed = FIRST_SPEED_ERROR * FIRST_SPEED_ERROR;
    return new ProcessEstimate(
        seconds,
        new ArrayRealVector(PlaceProcess.SIZE),
        MatrixUtils.createRealDiagonalMatrix(new double[] {place, place, speed, speed}));
  }

  private static Optional<PassPoint.Place> place(
      ProcessEstimate step, double wanderMetres, FlatGround ground) {
    double variance =
        Math.max(step.getCovariance().getEntry(0, 0), step.getCovariance().getEntry(1, 1));
    double error = Math.hypot(wanderMetres, Math.sqrt(Math.max(0, variance)));
    return error > LARGEST_ERROR_METRES
        ? Optional.empty()
        : Optional.of(
            new PassPoint.Place(
                ground.latitude(step.getState().getEntry(1)),
                ground.longitude(step.getState().getEntry(0)),
                error));
  }
}
