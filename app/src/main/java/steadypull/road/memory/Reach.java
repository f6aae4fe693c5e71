package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import steadypull.road.FlatGround;

/** What can be reached from a node along links within some metres, by the shortest way. */
final class Reach {
  private final Map<Long, Arrival> arrivals = new HashMap<>();

  private record Arrival(long node, double metres, @Nullable Arrival before) {}

  /** Looks around from a node. */
  Reach(RoadGraph graph, long from, double mostMetres, FlatGround ground) {
    PriorityQueue<Arrival> next = new PriorityQueue<>(Comparator.comparingDouble(Arrival::metres));
    next.add(new Arrival(from, 0, null));
    while (!next.isEmpty()) {
      Arrival here = next.remove();
      if (arrivals.putIfAbsent(here.node, here) == null) {
        graph.node(here.node).ifPresent(node -> goOn(graph, node, here, mostMetres, ground, next));
      }
    }
  }

  private void goOn(
      RoadGraph graph,
      RoadNode node,
      Arrival here,
      double mostMetres,
      FlatGround ground,
      PriorityQueue<Arrival> next) {
    for (RoadLink link : graph.links(node.id())) {
      if (!arrivals.containsKey(link.to())) {
        graph
            .node(link.to())
            .map(to -> here.metres + Stretch.of(node, to, ground).metres())
            .filter(metres -> metres <= mostMetres)
            .ifPresent(metres -> next.add(new Arrival(link.to(), metres, here)));
      }
    }
  }

  /** Metres to a node, or empty if it is not reached. */
  OptionalDouble metresTo(long node) {
    Arrival arrival = arrivals.get(node);
    return arrival == null ? OptionalDouble.empty() : OptionalDouble.of(arrival.metres);
  }

  /** The nodes on the way to a node that is reached, with both ends. */
  List<Long> wayTo(long node) {
    List<Long> way = new ArrayList<>();
    for (Arrival at = arrivals.get(node); at != null; at = at.before) {
      way.add(at.node);
    }
    Collections.reverse(way);
    return way;
  }
}
