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

  /** A receiver's slow wandering, which no smoothing takes out, m (estimated on open drives). */
  private static final double WANDER_METRES = 2.2;

  /** A place that is less certain is none. */
  private static final double LARGEST_ERROR_METRES = 15;

  private static final double FIRST_SPEED_ERROR = 30;
  private static final LUDecomposer DECOMPOSER = new LUDecomposer(1e-30);

  private PlaceSmoother() {}

  /**
   * The places of an unbroken drive.
   *
   * @param seconds in the order of time
   * @param fixes for each second the fix that came in it, if one did
   * @return one for each second
   */
  static List<Optional<PassPoint.Place>> smooth(
      List<RoadSecond> seconds, List<Optional<PositionFix>> fixes) {
    List<Optional<PassPoint.Place>> places =
        new ArrayList<>(Collections.nCopies(seconds.size(), Optional.empty()));
    for (int from = 0; from < seconds.size(); from += PIECE_SECONDS) {
      int to = Math.min(seconds.size(), from + PIECE_SECONDS);
      piece(
          seconds,
          fixes,
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
    List<ProcessEstimate> steps = steps(seconds, fixes, first, end, ground);
    for (int i = Math.max(first, from); i < to; i++) {
      places.set(i, place(steps.get(i - first), ground));
    }
  }

  private static List<ProcessEstimate> steps(
      List<RoadSecond> seconds,
      List<Optional<PositionFix>> fixes,
      int first,
      int end,
      FlatGround ground) {
    KalmanSmoother smoother = new KalmanSmoother(DECOMPOSER);
    ExtendedKalmanFilter<PlaceObservation> filter =
        new ExtendedKalmanFilter<>(
            DECOMPOSER, new PlaceProcess(), begin(seconds.get(first).seconds()));
    filter.setObserver(smoother);
    for (int i = first + 1; i < end; i++) {
      double time = seconds.get(i).seconds();
      filter.estimationStep(
          fixes
              .get(i)
              .map(fix -> ground.spot(fix.latitudeDegrees(), fix.longitudeDegrees()))
              .map(spot -> new PlaceObservation(time, true, spot.east(), spot.north()))
              .orElse(new PlaceObservation(time, false, 0, 0)));
    }
    return List.copyOf(smoother.backwardsSmooth()); // not the linked list, which is asked by number
  }

  private static ProcessEstimate begin(double seconds) {
    double place = WANDER_METRES * WANDER_METRES;
    double speed = FIRST_SPEED_ERROR * FIRST_SPEED_ERROR;
    return new ProcessEstimate(
        seconds,
        new ArrayRealVector(PlaceProcess.SIZE),
        MatrixUtils.createRealDiagonalMatrix(new double[] {place, place, speed, speed}));
  }

  private static Optional<PassPoint.Place> place(ProcessEstimate step, FlatGround ground) {
    double variance =
        Math.max(step.getCovariance().getEntry(0, 0), step.getCovariance().getEntry(1, 1));
    double error = Math.hypot(WANDER_METRES, Math.sqrt(Math.max(0, variance)));
    return error > LARGEST_ERROR_METRES
        ? Optional.empty()
        : Optional.of(
            new PassPoint.Place(
                ground.latitude(step.getState().getEntry(1)),
                ground.longitude(step.getState().getEntry(0)),
                error));
  }
}
