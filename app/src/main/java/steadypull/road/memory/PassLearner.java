package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;

/** Writes what a pass tells into the graph. One thread. */
final class PassLearner {
  /** Nodes of a straight road lie so far apart, m. */
  static final double NODE_METRES = 50;

  /** In bends they are closer, at every turn by so much, but never closer than that. */
  private static final double NODE_TURN = Math.toRadians(22);

  private static final double NEAREST_NODE_METRES = 12;

  /** Two nodes farther apart than that are not neighbours, m. */
  private static final double LONGEST_LINK_METRES = 150;

  /** What passes the other way tell is no news where somebody went this way, m beside. */
  private static final double BESIDE_METRES = 25;

  private final RoadGraph graph;
  private final boolean isOwnWay;
  private final boolean isMatched;
  private final int day;

  /**
   * What happens at some metres of the pass.
   *
   * @param node that is passed; empty: a new one
   */
  private record Event(double metres, Optional<Long> node) {}

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
    Optional<Long> last = before;
    for (Event event : events(curve, places)) {
      PassCurve.Spot spot = curve.at(event.metres);
      Optional<Long> node =
          event.node.isPresent() ? event.node.filter(id -> heard(id, spot)) : made(spot);
      if (node.isPresent()) {
        link(last, node.get());
        last = node;
      }
    }
    return last;
  }

  private List<Event> events(PassCurve curve, List<Optional<Alignment.Place>> places) {
    List<Event> events = passed(curve, places);
    List<Event> all = new ArrayList<>(events);
    List<PassCurve.Spot> spots = curve.spots();
    int next = 0;
    while (next < spots.size()) {
      int from = next;
      while (next < spots.size() && places.get(next).isEmpty()) {
        next++;
      }
      if (next > from) {
        double begin = spots.get(Math.max(0, from - 1)).metres();
        double end = spots.get(Math.min(spots.size() - 1, next)).metres();
        all.addAll(fresh(curve, begin, end, events, from == 0, next == spots.size()));
      }
      next++;
    }
    all.sort(Comparator.comparingDouble(Event::metres));
    return all;
  }

  /** The known nodes that the pass went by. */
  private List<Event> passed(PassCurve curve, List<Optional<Alignment.Place>> places) {
    List<Event> events = new ArrayList<>();
    for (int i = 1; i < places.size(); i++) {
      Optional<Alignment.Place> from = places.get(i - 1);
      Optional<Alignment.Place> to = places.get(i);
      if (from.isPresent() && to.isPresent()) {
        events.addAll(between(curve.spots().get(i - 1), from.get(), curve.spots().get(i), to.get()));
      }
    }
    return events;
  }

  private List<Event> between(
      PassCurve.Spot here, Alignment.Place from, PassCurve.Spot there, Alignment.Place to) {
    FlatGround ground = Alignment.ground(here);
    double driven = there.metres() - here.metres();
    Ways ways = new Ways(graph, from, driven, ground);
    double metres = ways.metresTo(to).orElse(0);
    List<Event> events = new ArrayList<>();
    if (metres <= 0) {
      return events;
    }
    double reached = (1 - from.share()) * from.stretch().metres();
    Optional<RoadNode> last = Optional.empty();
    for (long id : ways.nodesTo(to)) {
      RoadNode node = graph.node(id).orElseThrow();
      reached += last.map(before -> Stretch.of(before, node, ground).metres()).orElse(0.0);
      events.add(
          new Event(here.metres() + driven * Math.min(1, reached / metres), Optional.of(id)));
      last = Optional.of(node);
    }
    return events;
  }

  /** New nodes between two metres of the pass, clear of the known ones before and after. */
  private static List<Event> fresh(
      PassCurve curve,
      double begin,
      double end,
      List<Event> known,
      boolean isBegin,
      boolean isEnd) {
    double least = begin;
    double most = end;
    for (Event event : known) {
      if (event.metres <= begin) {
        least = event.metres;
      } else if (event.metres >= end) {
        most = event.metres - NEAREST_NODE_METRES;
        break;
      }
    }
    List<Event> events = new ArrayList<>();
    double last = isBegin ? begin - NODE_METRES : least;
    double heading = curve.at(Math.max(last, begin)).heading();
    double stop = isEnd ? end : most;
    for (double metres = Math.max(begin, last + NEAREST_NODE_METRES); metres <= stop; metres += 4) {
      double turned = Math.IEEEremainder(curve.at(metres).heading() - heading, 2 * Math.PI);
      if (metres - last >= NODE_METRES || Math.abs(turned) >= NODE_TURN) {
        events.add(new Event(metres, Optional.empty()));
        last = metres;
        heading = curve.at(metres).heading();
        metres += NEAREST_NODE_METRES - 4;
      }
    }
    return events;
  }

  /** Lets a known node hear of the pass. */
  private boolean heard(long id, PassCurve.Spot spot) {
    graph.node(id).ifPresent(node -> graph.set(Fusion.of(node, spot, isOwnWay), day));
    return graph.node(id).isPresent();
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
            BESIDE_METRES + NODE_METRES + NEAREST_NODE_METRES,
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

  private void link(Optional<Long> from, long to) {
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
