package steadypull.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import steadypull.drive.Rehearsal;
import steadypull.review.ForecastScore;
import steadypull.review.PlainForecaster;

/** The scores of several trips, one for each forecaster. One thread. */
final class RehearsalScores {
  private final ForecastScore own = new ForecastScore();
  private final ForecastScore inForce = new ForecastScore();
  private final ForecastScore threshold = new ForecastScore();
  private final ForecastScore line = new ForecastScore();
  private boolean isBeside;
  private int trips;
  private int followedTrips;
  private double followedSeconds;

  /** Counts a trip; one whose driver followed advice apart. */
  void add(Rehearsal.Rehearsed trip) {
    if (trip.isFollowed()) {
      followedTrips++;
      followedSeconds += trip.drive().seconds();
      return;
    }
    trips++;
    own.add(trip.drive(), trip.warnings());
    threshold.add(trip.drive(), PlainForecaster.THRESHOLD.warnings(trip.drive()));
    line.add(trip.drive(), PlainForecaster.STRAIGHT_LINE.warnings(trip.drive()));
  }

  /**
   * Counts what the rules in force say of the trip that was added last, where others were asked.
   */
  void addInForce(Rehearsal.Rehearsed trip) {
    isBeside = true;
    if (!trip.isFollowed()) {
      inForce.add(trip.drive(), trip.warnings());
    }
  }

  /** Trips that were scored. */
  int trips() {
    return trips;
  }

  /** Trips on which the driver followed advice. */
  int followedTrips() {
    return followedTrips;
  }

  /** How long these were. */
  double followedHours() {
    return followedSeconds / 3600;
  }

  /** Hours of driving that count. */
  double hours() {
    return own.hours();
  }

  /** Derates on the trips that were scored. */
  int derates() {
    return own.derates();
  }

  /** Each forecaster's score by the word for it, ours first. */
  Map<String, ForecastScore> rows() {
    Map<String, ForecastScore> rows = new LinkedHashMap<>();
    rows.put("steadypull", own);
    rows.put("threshold", threshold);
    rows.put("straight-line", line);
    if (isBeside) {
      rows.put("rules-in-force", inForce);
    }
    return rows;
  }
}
