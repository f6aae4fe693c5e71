package steadypull.road.memory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import steadypull.road.FlatGround;

/** Writes what a pass tells into the graph. One thread. */
final class PassLearner {
  /** Two nodes farther apart than that are not neighbours, m. */
  private static final double LONGEST_LINK_METRES = 150;

  /** What passes the other way tell is no news where somebody went this way, m beside. */
  private static final double BESIDE_METRES = 25;

  private final RoadGraph graph;
  private final boolean isOwnWay;
  private final boolean isMatched;
  private final int day;
  private final Set<Long> heard = new HashSet<>();
  private Optional<Long> first = Optional.empty();

  /**
   * A learner for one pass.
   *
   * @param isOwnWay whether the pass went the way it is learnt for, not the other
   * @param isMatched whether it may follow roads that are known; otherwise it is a road of its own
   * @param day in days since 1970
   */
  PassLearner(RoadGraph graph, boolean isOwnWay, boolean isMatched, int day) {
    this.graph = graph;
    this.isOwnWay = isOwnWay;
    this.isMatched = isMatched;
    this.day = day;
  }

  /**
   * Learns a stretch of the pass.
   *
   * @param before the node passed last before this stretch
   * @return the node passed last
   */
  Optional<Long> learn(PassCurve curve, Optional<Long> before) {
    List<Optional<Alignment.Place>> places =
        isMatched
            ? new Alignment(graph).of(curve)
            : curve.spots().stream().map(_ -> Optional.<Alignment.Place>empty()).toList();
    heard.clear();
    Optional<Long> last = before;
    List<PassEvents.Event> events = new PassEvents(graph, curve, places).all();
    Map<PassEvents.Event, Agreement> agreements = agreements(curve, events);
    for (PassEvents.Event event : events) {
      PassCurve.Spot spot = curve.at(event.metres());
      Optional<Long> node =
          event.node().isPresent()
              ? event.node().filter(id -> hears(id, spot, agreements.get(event)))
              : made(spot);
      if (node.isPresent()) {
        link(last, node.get());
        last = node;
        first = first.or(() -> node);
      }
    }
    return last;
  }

  /** The node passed first of all; empty before there was one. */
  Optional<Long> first() {
    return first;
  }

  /** For the known nodes among the events. */
  private Map<PassEvents.Event, Agreement> agreements(
      PassCurve curve, List<PassEvents.Event> events) {
    List<PassEvents.Event> known = new ArrayList<>();
    List<Agreement.Difference> differences = new ArrayList<>();
    for (PassEvents.Event event : events) {
      event
          .node()
          .flatMap(graph::node)
          .ifPresent(
              node -> {
                PassCurve.Spot spot = curve.at(event.metres());
                known.add(event);
                differences.add(
                    new Agreement.Difference(
                        event.metres(),
                        SightCosts.deviations(
                            spot.grade() - node.grade(), spot.gradeError(), node.gradeError())));
              });
    }
    Agreement[] found = Agreement.of(differences);
    Map<PassEvents.Event, Agreement> agreements = new HashMap<>();
    for (int i = 0; i < found.length; i++) {
      agreements.put(known.get(i), found[i]);
    }
    return agreements;
  }

  /** Lets a known node hear of the pass, once: it tells nothing new a second time. */
  private boolean hears(long id, PassCurve.Spot spot, @Nullable Agreement agreement) {
    Optional<RoadNode> node = graph.node(id);
    if (node.isPresent() && agreement != null && heard.add(id)) {
      switch (agreement) {
        case AGREES -> graph.set(Fusion.of(node.get(), spot, isOwnWay), day);
        case DOUBTFUL -> {} // the place may be right and the grade wrong, or the reverse
        case CONTRADICTS -> graph.set(Fusion.against(node.get(), spot, isOwnWay), day);
      }
    }
    return node.isPresent();
  }

  private Optional<Long> made(PassCurve.Spot spot) {
    if (!isOwnWay && isBesideKnown(spot)) {
      return Optional.empty();
    }
    Optional<Long> id = graph.add(spot.latitudeDegrees(), spot.longitudeDegrees());
    id.ifPresent(known -> graph.set(Fusion.begin(known, spot, isOwnWay), day));
    return id;
  }

  private boolean isBesideKnown(PassCurve.Spot spot) {
    FlatGround ground = Alignment.ground(spot);
    return graph
        .beginningNear(
            spot.latitudeDegrees(),
            spot.longitudeDegrees(),
            BESIDE_METRES + PassEvents.NODE_METRES + PassEvents.NEAREST_NODE_METRES,
            ground)
        .stream()
        .filter(stretch -> stretch.from().passes() > 0)
        .filter(
            stretch ->
                SightCosts.isSameWay(
                    Math.IEEEremainder(spot.heading() - stretch.heading(), 2 * Math.PI)))
        .anyMatch(stretch -> distance(stretch, spot, ground) < BESIDE_METRES);
  }

  private static double distance(Stretch stretch, PassCurve.Spot spot, FlatGround ground) {
    FlatGround.Spot here = ground.spot(spot.latitudeDegrees(), spot.longitudeDegrees());
    return stretch.at(stretch.shareNear(here)).distanceTo(here);
  }

  /** Counts a way between two nodes that are not too far apart. */
  void link(Optional<Long> from, long to) {
    Optional<RoadNode> before = from.flatMap(graph::node);
    Optional<RoadNode> after = graph.node(to);
    if (before.isPresent() && after.isPresent() && apart(before.get(), after.get())) {
      graph.link(before.get().id(), to, isOwnWay ? 1 : 0);
    }
  }

  private static boolean apart(RoadNode from, RoadNode to) {
    FlatGround ground = FlatGround.around(from.latitudeDegrees(), from.longitudeDegrees());
    return Stretch.of(from, to, ground).metres() <= LONGEST_LINK_METRES;
  }
}
