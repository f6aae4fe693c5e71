package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;

/**
 * A place on the graph where the vehicle may be. Immutable.
 *
 * @param stretch it is on
 * @param share of the stretch that lies behind it, 0 to 1
 * @param weight its probability, not normalised, above 0
 */
record Hypothesis(Stretch stretch, double share, double weight) {
  private static final double LEAST_SHARE = 1e-9;

  /** A node moves by no more when one more pass is learned; farther away it is another, m. */
  private static final double SAME_METRES = 30;

  Hypothesis weighed(double factor) {
    return new Hypothesis(stretch, share, weight * factor);
  }

  Hypothesis on(FlatGround ground) {
    return new Hypothesis(Stretch.of(stretch.from(), stretch.to(), ground), share, weight);
  }

  /** The same place as its graph knows it now, or empty if no such way is known any more. */
  Optional<Hypothesis> still(RoadGraph graph, FlatGround ground) {
    boolean isLinked =
        graph.links(stretch.from().id()).stream().anyMatch(link -> link.to() == stretch.to().id());
    if (!isLinked) {
      return Optional.empty();
    }
    RoadNode from = graph.node(stretch.from().id()).orElseThrow();
    RoadNode to = graph.node(stretch.to().id()).orElseThrow();
    Hypothesis now = new Hypothesis(Stretch.of(from, to, ground), share, weight);
    return now.spot().distanceTo(spot()) <= SAME_METRES ? Optional.of(now) : Optional.empty();
  }

  FlatGround.Spot spot() {
    return stretch.at(share);
  }

  /** Whether both stand for one place: on one stretch, or on two that follow each other. */
  boolean isBeside(Hypothesis other) {
    return isOnSameStretch(other)
        || stretch.to().id() == other.stretch.from().id()
        || other.stretch.to().id() == stretch.from().id();
  }

  boolean isOnSameStretch(Hypothesis other) {
    return stretch.from().id() == other.stretch.from().id()
        && stretch.to().id() == other.stretch.to().id();
  }

  /**
   * Where it may be some metres on; where ways part there are several, and where knowledge ends,
   * none.
   */
  List<Hypothesis> moved(double metres, RoadGraph graph, FlatGround ground) {
    List<Hypothesis> there = new ArrayList<>(1);
    move(metres, graph, ground, there);
    return there;
  }

  private void move(double metres, RoadGraph graph, FlatGround ground, List<Hypothesis> there) {
    double reached = share + metres / stretch.metres();
    if (reached <= 1) {
      there.add(new Hypothesis(stretch, Math.max(0, reached), weight));
      return;
    }
    double left = (reached - 1) * stretch.metres();
    List<RoadLink> links = graph.links(stretch.to().id());
    double[] odds = links.isEmpty() ? new double[0] : Odds.of(links);
    for (int i = 0; i < odds.length; i++) {
      if (weight * odds[i] > LEAST_SHARE) {
        RoadNode next = graph.node(links.get(i).to()).orElseThrow();
        new Hypothesis(Stretch.of(stretch.to(), next, ground), 0, weight * odds[i])
            .move(left, graph, ground, there);
      }
    }
  }
}
