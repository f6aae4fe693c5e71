package steadypull.drive;

import java.util.List;
import java.util.Optional;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.store.TripEvent;

/**
 * The road ahead as everything that looks ahead is told of it. Whoever knows roads says something
 * new each second; here it is held, moved on by what the vehicle drives, and told anew only where
 * that is no longer true, so that a trip can keep every word of it. Pipeline thread only.
 */
final class RoadTold {
  /** A better word on the same road waits so long. */
  private static final long PATIENCE_MICROS = 15_000_000;

  /** As far as a forecast reaches at 120 km/h. */
  private static final double FARTHEST_METRES = 20_000;

  private RoadAhead told = new RoadAhead.Unknown();
  private long toldMicros;
  private double metresSince;
  private boolean isFresh;

  /**
   * Takes what the vehicle has driven in the second that passes, metres. What was told in it was
   * told of its end.
   */
  void moved(double metres) {
    metresSince = isFresh ? 0 : metresSince + metres;
    isFresh = false;
  }

  /**
   * Hears what is known now, before the second's metres are taken. The event lies a moment before
   * the second is over, so that it is taken before everything that is made of the second when the
   * trip is run again.
   *
   * @param timeMicros a whole second
   * @param metres driven in it
   * @return the event that tells of it anew, if it is to be told
   */
  Optional<TripEvent> hear(long timeMicros, double metres, RoadAhead known) {
    RoadAhead now = ahead(metresSince + metres);
    RoadAhead next = near(known);
    boolean isPatient = timeMicros - toldMicros < PATIENCE_MICROS;
    if (RoadChange.isSame(now, next) && (isPatient || RoadChange.isAsGood(now, next))) {
      return Optional.empty();
    }
    TripEvent event = RoadNews.event(timeMicros - 1, next);
    take(event);
    return Optional.of(event);
  }

  /** Takes what was told at its moment. */
  void take(TripEvent event) {
    told = RoadNews.read(event);
    toldMicros = event.timeMicros();
    isFresh = true;
  }

  /** The road ahead from where the vehicle is now. */
  RoadAhead ahead() {
    return ahead(metresSince);
  }

  private RoadAhead ahead(double metres) {
    return switch (told) {
      case RoadAhead.Unknown unknown -> unknown;
      case RoadAhead.Ungraded ungraded -> ungraded;
      case RoadAhead.Known known -> moved(known, metres);
    };
  }

  private static RoadAhead moved(RoadAhead.Known known, double metres) {
    int pieces = (int) Math.round(metres / known.certain().pieceMetres());
    return pieces <= known.certain().size()
        ? new RoadAhead.Known(known.certain().from(pieces), known.branches(), known.origin())
        : new RoadAhead.Unknown();
  }

  private static RoadAhead near(RoadAhead ahead) {
    return switch (ahead) {
      case RoadAhead.Unknown unknown -> unknown;
      case RoadAhead.Ungraded ungraded -> ungraded;
      case RoadAhead.Known known -> near(known);
    };
  }

  private static RoadAhead.Known near(RoadAhead.Known known) {
    int most = (int) (FARTHEST_METRES / known.certain().pieceMetres());
    GradeProfile certain = first(known.certain(), most);
    List<RoadAhead.Branch> branches =
        known.certain().size() > most
            ? List.of()
            : known.branches().stream()
                .map(way -> new RoadAhead.Branch(way.odds(), first(way.profile(), most)))
                .toList();
    return new RoadAhead.Known(certain, branches, known.origin());
  }

  private static GradeProfile first(GradeProfile profile, int most) {
    int pieces = Math.min(most, WayText.MOST_PIECES);
    return profile.size() > pieces ? profile.first(pieces) : profile;
  }
}
