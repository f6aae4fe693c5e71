package steadypull.ui;

import steadypull.channel.QuantityFormat;
import steadypull.drive.ClimbAhead;
import steadypull.drive.RoadState;
import steadypull.road.RoadAhead;

/** Words for the road ahead: a climb and its top, none for so far, or that nobody knows. */
final class AheadWords {
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /** Slower, and a time to the top would say nothing. */
  private static final double LEAST_KILOMETRES_PER_HOUR = 10;

  private static final double PER_CENT = 0.01;

  private final Words words;
  private final QuantityFormat quantities;

  /**
   * What is said of the road ahead.
   *
   * @param place first line beside the road strip
   * @param note second line
   * @param origin from where it is known; empty if it is not
   */
  record Lines(String place, String note, String origin) {}

  AheadWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  Lines lines(RoadState road, GroundAhead ground) {
    if (!ground.isKnown()) {
      return new Lines(
          words.say(isOnRoute(road) ? "road.ungraded" : "road.unknown"),
          words.say(road.gradePercent().isPresent() ? "road.holding" : "road.noGrade"),
          "");
    }
    String origin = origin(road);
    return road.climb()
        .map(climb -> new Lines(climb(climb), top(climb, road), origin))
        .orElseGet(
            () ->
                new Lines(words.say("road.known"), words.say("road.noClimb", known(road)), origin));
  }

  private static boolean isOnRoute(RoadState road) {
    return switch (road.ahead()) {
      case RoadAhead.Ungraded() -> true;
      case RoadAhead.Unknown() -> false;
      case RoadAhead.Known known -> known.origin() != RoadAhead.Origin.DRIVEN;
    };
  }

  private String origin(RoadState road) {
    return road.ahead() instanceof RoadAhead.Known known
        ? words.say(
            switch (known.origin()) {
              case ROUTE -> "road.fromRoute";
              case DRIVEN -> "road.driven";
              case ROUTE_AND_DRIVEN -> "road.fromBoth";
            })
        : "";
  }

  private String climb(ClimbAhead climb) {
    String grade = quantities.whole(climb.meanGrade() / PER_CENT);
    return climb.isBegun()
        ? words.say("road.climbHere", grade)
        : words.say("road.climbAhead", grade, quantities.distance(climb.toStartMetres()));
  }

  private String top(ClimbAhead climb, RoadState road) {
    String distance = quantities.distance(climb.toEndMetres());
    if (!climb.isTopKnown()) {
      // of the climb, not of the way to it
      return words.say(
          "road.atLeast",
          climb.isBegun() ? distance : quantities.distance(climb.profile().lengthMetres()));
    }
    double speed = road.speedKilometresPerHour().orElse(0);
    return speed < LEAST_KILOMETRES_PER_HOUR
        ? words.say("road.topStanding", distance)
        : words.say(
            "road.top",
            distance,
            quantities.countdown(climb.toEndMetres() / speed * KILOMETRES_PER_HOUR));
  }

  private String known(RoadState road) {
    return switch (road.ahead()) {
      case RoadAhead.Unknown() -> quantities.distance(0);
      case RoadAhead.Ungraded() -> quantities.distance(0);
      case RoadAhead.Known known -> quantities.distance(known.certain().lengthMetres());
    };
  }
}
