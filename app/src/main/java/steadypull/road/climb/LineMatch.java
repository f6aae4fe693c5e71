package steadypull.road.climb;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.linearref.LengthIndexedLine;
import steadypull.road.FlatGround;

/**
 * How a climb that was driven lies along a known one. Immutable.
 *
 * @param startMetres where on the known climb it began; below 0 before its start
 * @param endMetres where on the known climb it ended; beyond its length after its end
 * @param asideMetres how far beside the known line it was, half of it nearer; 0 or more
 * @param knownMetres the length of the known line
 */
record LineMatch(double startMetres, double endMetres, double asideMetres, double knownMetres) {
  /**
   * Usual receivers keep half of their fixes within 4 m (estimated), so that two passes differ by 6
   * m; a road that runs 30 m beside, by more than 20.
   */
  private static final double MOST_ASIDE_METRES = 12;

  /** What is farther away is on another road, or seen through reflections. */
  private static final double ASTRAY_METRES = 40;

  /** Reflections and outages spoil some of a poor receiver's line (estimated). */
  private static final double MOST_ASTRAY = 0.2;

  /** A road that only begins or ends alike is another: both ends must lie together. */
  private static final double END_SPOTS = 0.1;

  /** Nine steps in ten lead forward along the known line; at rest and in bends some do not. */
  private static final double FORWARD_SHARE = 0.9;

  /**
   * How far a climb's ends move between passes: 100 m on most, 300 m where the road turns slowly,
   * but no more than some share of a short climb (measured on the invented country).
   */
  private static final double END_METRES = 300;

  private static final double SHORT_END_SHARE = 0.15;

  /** On long climbs so much of the length: their passes can be compared all the same. */
  private static final double LONG_END_SHARE = 0.04;

  /** Looks at a climb's spots, two or more; empty if they do not lie along the known line. */
  static Optional<LineMatch> of(Climb climb, KnownClimb known) {
    FlatGround ground = known.line().ground();
    var line = known.line().onGround();
    LengthIndexedLine index = new LengthIndexedLine(line);
    List<Climb.Spot> spots = climb.spots();
    double[] along = new double[spots.size()];
    double[] aside = new double[spots.size()];
    int forward = 0;
    for (int i = 0; i < along.length; i++) {
      Climb.Spot spot = spots.get(i);
      Coordinate place =
          ClimbLine.coordinate(ground, spot.latitudeDegrees(), spot.longitudeDegrees());
      along[i] = index.project(place);
      aside[i] = index.extractPoint(along[i]).distance(place);
      forward += i > 0 && along[i] >= along[i - 1] ? 1 : 0;
    }
    return isAlong(aside, forward)
        ? Optional.of(between(climb, along, aside, line.getLength()))
        : Optional.empty();
  }

  private static boolean isAlong(double[] aside, int forward) {
    int end = Math.max(1, (int) (END_SPOTS * aside.length));
    return quantile(aside, 0.5) <= MOST_ASIDE_METRES
        && quantile(aside, 1 - MOST_ASTRAY) <= ASTRAY_METRES
        && quantile(Arrays.copyOf(aside, end), 0.5) <= ASTRAY_METRES
        && quantile(Arrays.copyOfRange(aside, aside.length - end, aside.length), 0.5)
            <= ASTRAY_METRES
        && forward >= FORWARD_SHARE * (aside.length - 1);
  }

  private static LineMatch between(
      Climb climb, double[] along, double[] aside, double knownMetres) {
    int first = 0;
    while (aside[first] > ASTRAY_METRES) {
      first++;
    }
    int last = along.length - 1;
    while (aside[last] > ASTRAY_METRES) {
      last--;
    }
    List<Climb.Spot> spots = climb.spots();
    return new LineMatch(
        along[first] - spots.get(first).metres(),
        along[last] + climb.lengthMetres() - spots.get(last).metres(),
        quantile(aside, 0.5),
        knownMetres);
  }

  /** Whether it is the known climb from its start to its end. */
  boolean isWhole() {
    return Math.abs(startMetres) <= tolerance() && Math.abs(endMetres - knownMetres) <= tolerance();
  }

  /** Whether it lies within the known climb. */
  boolean isPart() {
    return startMetres >= -tolerance() && endMetres <= knownMetres + tolerance();
  }

  private double tolerance() {
    return Math.max(
        LONG_END_SHARE * knownMetres, Math.min(END_METRES, SHORT_END_SHARE * knownMetres));
  }

  private static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(int) (share * (sorted.length - 1))];
  }
}
