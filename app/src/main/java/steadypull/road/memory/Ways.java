package steadypull.road.memory;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.road.FlatGround;

/** The ways on from a place on a stretch, as far as somebody came who drove some metres. */
final class Ways {
  private static final double SLACK_METRES = 60;
  private static final double SLACK_SHARE = 0.3;

  /** A place may be told so far behind the one before, m. */
  private static final double BACKWARDS_METRES = 15;

  private final Alignment.Place from;
  private final double toEnd;
  private final Reach reach;

  Ways(RoadGraph graph, Alignment.Place from, double metres, FlatGround ground) {
    this.from = from;
    toEnd = (1 - from.share()) * from.stretch().metres();
    reach =
        new Reach(
            graph,
            from.stretch().to().id(),
            Math.max(0, metres * (1 + SLACK_SHARE) + SLACK_METRES - toEnd),
            ground);
  }

  /** Metres along the road to another place, or empty if it does not lead there. */
  OptionalDouble metresTo(Alignment.Place to) {
    if (isSame(to)) {
      double metres = (to.share() - from.share()) * from.stretch().metres();
      return metres < -BACKWARDS_METRES ? OptionalDouble.empty() : OptionalDouble.of(metres);
    }
    OptionalDouble there = reach.metresTo(to.stretch().from().id());
    return there.isEmpty()
        ? there
        : OptionalDouble.of(toEnd + there.getAsDouble() + to.share() * to.stretch().metres());
  }

  /** The nodes that are passed on the way to another place to which the road leads. */
  List<Long> nodesTo(Alignment.Place to) {
    return isSame(to) ? List.of() : reach.wayTo(to.stretch().from().id());
  }

  private boolean isSame(Alignment.Place to) {
    return to.stretch().from().id() == from.stretch().from().id()
        && to.stretch().to().id() == from.stretch().to().id();
  }
}
