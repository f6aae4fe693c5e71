package steadypull.road.memory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.demo.road.Road;
import steadypull.demo.road.Street;
import steadypull.demo.road.Tour;
import steadypull.road.FlatGround;

/**
 * Compares the strands of a memory with the ways that there are. Every 25 m a line is drawn across
 * each way; where it meets more strands that lead the same way than ways, one road was learnt as
 * two.
 */
final class Strands {
  private static final double STEP_METRES = 25;

  /** So far to each side the line across reaches, m: a strand farther away is counted there. */
  private static final double ASIDE_METRES = 40;

  /** Over less than that two strands that lie beside each other are an end and a beginning. */
  private static final double SHORTEST_METRES = 100;

  private static final FlatGround GROUND = FlatGround.around(-41.5, -118);

  private final double wayMetres;
  private int strands;
  private double strandMetres;
  private double missingMetres;

  private record Piece(FlatGround.Spot begin, FlatGround.Spot end) {
    double heading() {
      return Math.atan2(end.north() - begin.north(), end.east() - begin.east());
    }

    FlatGround.Spot middle() {
      return new FlatGround.Spot(
          (begin.east() + end.east()) / 2, (begin.north() + end.north()) / 2);
    }
  }

  private record Way(Street street, boolean isForward) {}

  private record Cell(long east, long north) {
    static Cell of(FlatGround.Spot spot) {
      return new Cell(
          Math.floorDiv((long) spot.east(), 200L), Math.floorDiv((long) spot.north(), 200L));
    }
  }

  /** Looks at a memory that was taught those tours and nothing else. */
  static Strands of(RoadMemory memory, List<Tour> tours) {
    return new Strands(memory, ways(tours));
  }

  private Strands(RoadMemory memory, List<List<Piece>> ways) {
    Map<Cell, List<Piece>> real = new HashMap<>();
    ways.forEach(way -> way.forEach(piece -> keep(real, piece)));
    Map<Cell, List<Piece>> learnt = new HashMap<>();
    learnt(memory).forEach(piece -> keep(learnt, piece));
    double metres = 0;
    for (List<Piece> way : ways) {
      metres += way.size() * STEP_METRES;
      int run = 0;
      for (Piece piece : way) {
        int wanted = crossed(real, piece);
        int found = crossed(learnt, piece);
        if (found > wanted) {
          run++;
        } else {
          close(run);
          run = 0;
        }
        missingMetres += found < 1 ? STEP_METRES : 0;
      }
      close(run);
    }
    wayMetres = metres;
  }

  private void close(int run) {
    if (run * STEP_METRES >= SHORTEST_METRES) {
      strands++;
      strandMetres += run * STEP_METRES;
    }
  }

  /** How many false strands there are in 100 km of ways. */
  double per100Kilometres() {
    return strands / wayMetres * 100_000;
  }

  /** The share of the ways that was learnt more than once, 0 to 1. */
  double doubledShare() {
    return strandMetres / wayMetres;
  }

  /** The share of the ways that was not learnt, 0 to 1. */
  double missingShare() {
    return missingMetres / wayMetres;
  }

  private static void keep(Map<Cell, List<Piece>> cells, Piece piece) {
    cells.computeIfAbsent(Cell.of(piece.middle()), _ -> new ArrayList<>()).add(piece);
  }

  private static int crossed(Map<Cell, List<Piece>> cells, Piece across) {
    Cell here = Cell.of(across.middle());
    int count = 0;
    for (int east = -1; east <= 1; east++) {
      for (int north = -1; north <= 1; north++) {
        List<Piece> there =
            cells.getOrDefault(new Cell(here.east() + east, here.north() + north), List.of());
        count += (int) there.stream().filter(piece -> isCrossed(piece, across)).count();
      }
    }
    return count;
  }

  /** Whether the line across the middle of one piece meets another that leads the same way. */
  private static boolean isCrossed(Piece piece, Piece across) {
    double heading = across.heading();
    if (Math.abs(Math.IEEEremainder(piece.heading() - heading, 2 * Math.PI)) > Math.PI / 3) {
      return false;
    }
    FlatGround.Spot middle = across.middle();
    double begin = along(piece.begin(), middle, heading);
    double end = along(piece.end(), middle, heading);
    if (begin > 0 || end <= 0) {
      return false;
    }
    double share = begin / (begin - end);
    double aside =
        along(piece.begin(), middle, heading + Math.PI / 2) * (1 - share)
            + along(piece.end(), middle, heading + Math.PI / 2) * share;
    return Math.abs(aside) <= ASIDE_METRES;
  }

  private static double along(FlatGround.Spot spot, FlatGround.Spot from, double heading) {
    return (spot.east() - from.east()) * Math.cos(heading)
        + (spot.north() - from.north()) * Math.sin(heading);
  }

  /** Each way once, however many tours take it. */
  private static List<List<Piece>> ways(List<Tour> tours) {
    Map<Way, List<Piece>> longest = new HashMap<>();
    for (Tour tour : tours) {
      double from = 0;
      for (Tour.Stretch stretch : tour.stretches()) {
        double to = from + Math.abs(stretch.to() - stretch.from());
        Way way = new Way(stretch.street(), stretch.to() > stretch.from());
        List<Piece> pieces = pieces(tour, from, to);
        longest.merge(way, pieces, (one, other) -> one.size() >= other.size() ? one : other);
        from = to;
      }
    }
    return List.copyOf(longest.values());
  }

  private static List<Piece> pieces(Tour tour, double from, double to) {
    List<Piece> pieces = new ArrayList<>();
    for (double metres = from;
        metres + STEP_METRES < Math.min(to, tour.length() - 300);
        metres += STEP_METRES) {
      pieces.add(new Piece(spot(tour.at(metres)), spot(tour.at(metres + STEP_METRES))));
    }
    return pieces;
  }

  private static FlatGround.Spot spot(Road.Place place) {
    return GROUND.spot(place.latitude(), place.longitude());
  }

  private static List<Piece> learnt(RoadMemory memory) {
    Set<Long> ids = new HashSet<>(memory.graph().nodesNear(-41.5, -118, 100_000));
    List<Piece> pieces = new ArrayList<>();
    for (long id : ids) {
      RoadNode node = memory.graph().node(id).orElseThrow();
      for (RoadLink link : memory.graph().links(id)) {
        if (link.count() > 0) {
          pieces.add(new Piece(spot(node), spot(memory.graph().node(link.to()).orElseThrow())));
        }
      }
    }
    return pieces;
  }

  private static FlatGround.Spot spot(RoadNode node) {
    return GROUND.spot(node.latitudeDegrees(), node.longitudeDegrees());
  }
}
