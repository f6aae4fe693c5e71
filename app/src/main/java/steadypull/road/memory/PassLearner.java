package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
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
  /** Nodes of a straight road lie so far apart, m. */
  static final double NODE_METRES = 50;

  /** In bends they are closer, at every turn by so much, but never closer than that. */
  private static final double NODE_TURN = Math.toRadians(22);

  private static final double NEAREST_NODE_METRES = 12;

  /** A node so near to where a road is left or met belongs to it, m. */
  private static final double BORDER_METRES = 15;

  /** So near the pass went by a node, m. */
  private static final double PASSED_METRES = 10;

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
    heard.clear();
    Optional<Long> last = before;
    List<Event> events = events(curve, places);
    Map<Event, Agreement> agreements = agreements(curve, events);
    for (Event event : events) {
      PassCurve.Spot spot = curve.at(event.metres);
      Optional<Long> node =
          event.node.isPresent()
              ? event.node.filter(id -> hears(id, spot, agreements.get(event)))
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
  private Map<Event, Agreement> agreements(PassCurve curve, List<Event> events) {
    List<Event> known = new ArrayList<>();
    List<Agreement.Difference> differences = new ArrayList<>();
    for (Event event : events) {
      event
          .node
          .flatMap(graph::node)
          .ifPresent(
              node -> {
                PassCurve.Spot spot = curve.at(event.metres);
                known.add(event);
                differences.add(
                    new Agreement.Difference(
                        event.metres,
                        SightCosts.deviations(
                            spot.grade() - node.grade(), spot.gradeError(), node.gradeError())));
              });
    }
    Agreement[] found = Agreement.of(differences);
    Map<Event, Agreement> agreements = new HashMap<>();
    for (int i = 0; i < found.length; i++) {
      agreements.put(known.get(i), found[i]);
    }
    return agreements;
  }

  private List<Event> events(PassCurve curve, List<Optional<Alignment.Place>> places) {
    List<Event> known = passed(curve, places);
    List<Event> all = new ArrayList<>();
    List<PassCurve.Spot> spots = curve.spots();
    int next = 0;
    while (next < spots.size()) {
      int from = next;
      while (next < spots.size() && places.get(next).isEmpty()) {
        next++;
      }
      if (next > from) {
        if (from > 0) {
          left(curve, places.get(from - 1).orElseThrow(), spots.get(from - 1))
              .ifPresent(known::add);
        }
        if (next < spots.size()) {
          met(curve, places.get(next).orElseThrow(), spots.get(next)).ifPresent(known::add);
        }
        double begin = spots.get(Math.max(0, from - 1)).metres();
        double end = spots.get(Math.min(spots.size() - 1, next)).metres();
        all.addAll(fresh(curve, begin, end, known));
      }
      next++;
    }
    places.getFirst().flatMap(place -> met(curve, place, spots.getFirst())).ifPresent(known::add);
    places.getLast().flatMap(place -> left(curve, place, spots.getLast())).ifPresent(known::add);
    all.addAll(known);
    all.sort(Comparator.comparingDouble(Event::metres));
    return all;
  }

  /** The node ahead of where a known road is left, if the pass still went by: above all its end. */
  private static Optional<Event> left(PassCurve curve, Alignment.Place place, PassCurve.Spot spot) {
    double metres = spot.metres() + (1 - place.share()) * place.stretch().metres();
    return border(curve, metres, spot.metres(), place.stretch().to());
  }

  /**
   * The node behind where a known road is met, if the pass went by already: above all its begin.
   */
  private static Optional<Event> met(PassCurve curve, Alignment.Place place, PassCurve.Spot spot) {
    double metres = spot.metres() - place.share() * place.stretch().metres();
    return border(curve, metres, spot.metres(), place.stretch().from());
  }

  private static Optional<Event> border(
      PassCurve curve, double metres, double placeMetres, RoadNode node) {
    PassCurve.Spot there = curve.at(metres);
    FlatGround.Spot beside =
        Alignment.ground(there).spot(node.latitudeDegrees(), node.longitudeDegrees());
    boolean isPassed =
        Math.abs(metres - placeMetres) <= BORDER_METRES
            || Math.hypot(beside.east(), beside.north()) <= PASSED_METRES;
    return isPassed ? Optional.of(new Event(metres, Optional.of(node.id()))) : Optional.empty();
  }

  /** The known nodes that the pass went by. */
  private List<Event> passed(PassCurve curve, List<Optional<Alignment.Place>> places) {
    List<Event> events = new ArrayList<>();
    for (int i = 1; i < places.size(); i++) {
      Optional<Alignment.Place> from = places.get(i - 1);
      Optional<Alignment.Place> to = places.get(i);
      if (from.isPresent() && to.isPresent()) {
        events.addAll(
            between(curve.spots().get(i - 1), from.get(), curve.spots().get(i), to.get()));
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
  private static List<Event> fresh(PassCurve curve, double begin, double end, List<Event> known) {
    double last =
        known.stream()
            .mapToDouble(Event::metres)
            .filter(metres -> metres <= begin + NODE_METRES)
            .max()
            .orElse(begin - NODE_METRES);
    double most =
        known.stream()
            .mapToDouble(Event::metres)
            .filter(metres -> metres > last && metres >= end - NODE_METRES)
            .map(metres -> metres - NEAREST_NODE_METRES)
            .min()
            .orElse(end);
    List<Event> events = new ArrayList<>();
    double before = last;
    double heading = curve.at(Math.max(last, begin)).heading();
    for (double metres = Math.max(begin, last + NEAREST_NODE_METRES); metres <= most; metres += 4) {
      double turned = Math.IEEEremainder(curve.at(metres).heading() - heading, 2 * Math.PI);
      if (metres - before >= NODE_METRES || Math.abs(turned) >= NODE_TURN) {
        events.add(new Event(metres, Optional.empty()));
        before = metres;
        heading = curve.at(metres).heading();
        metres += NEAREST_NODE_METRES - 4;
      }
    }
    return events;
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
