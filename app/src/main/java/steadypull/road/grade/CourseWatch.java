package steadypull.road.grade;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.road.FlatGround;

/**
 * Watches a receiver's fixes for a turn on the spot or a hairpin: behind either the grade is
 * another. Pipeline thread only.
 */
final class CourseWatch {
  /** Legs of a course; shorter ones are the receiver's own wandering. */
  private static final double LEG_METRES = 6;

  /** Legs that turn by more point back, radians. */
  private static final double BACK = Math.toRadians(125);

  /** A turn takes a few legs; a road that bends more slowly is followed anyway. */
  private static final int LEGS = 5;

  /**
   * Who comes back this near to the way there drives the same road: a hairpin needs a radius of 8 m
   * and more, which is 13 m across after 125 degrees.
   */
  private static final double SAME_ROAD_METRES = 8;

  private record Place(double seconds, double latitude, double longitude) {}

  private record Leg(double course, Place end) {}

  private final Deque<Leg> legs = new ArrayDeque<>();
  private @Nullable Place kept;

  /**
   * Takes a fix and tells of a turn back, if one has just shown itself; once for each turn.
   *
   * @param seconds later than the fix before
   */
  Optional<Turn> turned(double seconds, double latitudeDegrees, double longitudeDegrees) {
    Place now = new Place(seconds, latitudeDegrees, longitudeDegrees);
    Place from = kept;
    if (from == null) {
      kept = now;
      return Optional.empty();
    }
    FlatGround.Spot leg = spot(from, now);
    if (Math.hypot(leg.east(), leg.north()) < LEG_METRES) {
      return Optional.empty();
    }
    kept = now;
    return turned(new Leg(Math.atan2(leg.north(), leg.east()), now), from);
  }

  private Optional<Turn> turned(Leg leg, Place from) {
    Optional<Leg> forward =
        legs.stream()
            .filter(before -> isBack(leg.course() - before.course()))
            .max(Comparator.comparingDouble(before -> before.end().seconds()));
    if (forward.isPresent()) {
      legs.clear();
    }
    legs.addLast(leg);
    if (legs.size() > LEGS) {
      legs.removeFirst();
    }
    return forward.map(
        before ->
            new Turn(
                (before.end().seconds() + from.seconds()) / 2,
                across(before, leg.end()) < SAME_ROAD_METRES));
  }

  private static boolean isBack(double turned) {
    return Math.abs(Math.IEEEremainder(turned, 2 * Math.PI)) > BACK;
  }

  /** How far a place lies beside the line of a leg, m. */
  private static double across(Leg leg, Place place) {
    FlatGround.Spot beyond = spot(leg.end(), place);
    return Math.abs(
        beyond.north() * Math.cos(leg.course()) - beyond.east() * Math.sin(leg.course()));
  }

  private static FlatGround.Spot spot(Place origin, Place place) {
    return FlatGround.around(origin.latitude(), origin.longitude())
        .spot(place.latitude(), place.longitude());
  }
}
