package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;

/**
 * What a pass meets on its way, in metres: known nodes where it is on roads that are known, new
 * ones elsewhere, and how one borders on the other. Reads the graph and writes nothing. One thread.
 */
final class PassEvents {
  /** Nodes of a straight road lie so far apart, m. */
  static final double NODE_METRES = 50;

  /** In bends they are closer, at every turn by so much, but never closer than that. */
  private static final double NODE_TURN = Math.toRadians(22);

  static final double NEAREST_NODE_METRES = 12;

  /** A node so near to where a road is left or met belongs to it, m. */
  private static final double BORDER_METRES = 15;

  /** So near the pass went by a node, m. */
  private static final double PASSED_METRES = 10;

  private final RoadGraph graph;
  private final PassCurve curve;
  private final List<Optional<Alignment.Place>> places;

  /**
   * What happens at some metres of the pass.
   *
   * @param node that is passed; empty: a new one
   */
  record Event(double metres, Optional<Long> node) {}

  /**
   * The events of a stretch of a pass.
   *
   * @param places on roads of the graph for each of the stretch's spots; empty: on none of them
   */
  PassEvents(RoadGraph graph, PassCurve curve, List<Optional<Alignment.Place>> places) {
    this.graph = graph;
    this.curve = curve;
    this.places = places;
  }

  /** All events in the order of the metres driven. */
  List<Event> all() {
    List<Event> known = passed();
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
          left(places.get(from - 1).orElseThrow(), spots.get(from - 1)).ifPresent(known::add);
        }
        if (next < spots.size()) {
          met(places.get(next).orElseThrow(), spots.get(next)).ifPresent(known::add);
        }
        double begin = spots.get(Math.max(0, from - 1)).metres();
        double end = spots.get(Math.min(spots.size() - 1, next)).metres();
        all.addAll(fresh(begin, end, known));
      }
      next++;
    }
    places.getFirst().flatMap(place -> met(place, spots.getFirst())).ifPresent(known::add);
    places.getLast().flatMap(place -> left(place, spots.getLast())).ifPresent(known::add);
    all.addAll(known);
    all.sort(Comparator.comparingDouble(Event::metres));
    return all;
  }

  /** The node ahead of where a known road is left, if the pass still went by: above all its end. */
  private Optional<Event> left(Alignment.Place place, PassCurve.Spot spot) {
    double metres = spot.metres() + (1 - place.share()) * place.stretch().metres();
    return border(metres, spot.metres(), place.stretch().to());
  }

  /**
   * The node behind where a known road is met, if the pass went by already: above all its begin.
   */
  private Optional<Event> met(Alignment.Place place, PassCurve.Spot spot) {
    double metres = spot.metres() - place.share() * place.stretch().metres();
    return border(metres, spot.metres(), place.stretch().from());
  }

  private Optional<Event> border(double metres, double placeMetres, RoadNode node) {
    PassCurve.Spot there = curve.at(metres);
    FlatGround.Spot beside =
        Alignment.ground(there).spot(node.latitudeDegrees(), node.longitudeDegrees());
    boolean isPassed =
        Math.abs(metres - placeMetres) <= BORDER_METRES
            || Math.hypot(beside.east(), beside.north()) <= PASSED_METRES;
    return isPassed ? Optional.of(new Event(metres, Optional.of(node.id()))) : Optional.empty();
  }

  /** The known nodes that the pass went by. */
  private List<Event> passed() {
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
  private List<Event> fresh(double begin, double end, List<Event> known) {
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
}
