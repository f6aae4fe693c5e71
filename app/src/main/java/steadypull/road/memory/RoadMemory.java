package steadypull.road.memory;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadypull.road.FlatGround;
import steadypull.road.RoadPass;

/**
 * Grades of roads by place and direction, learnt pass by pass. Each direction of a road is a chain
 * of nodes of its own, some 50 m apart and closer in bends; where ways part, a node has more than
 * one link.
 *
 * <p>A pass also tells the other way, with its sign changed and a larger error, for whoever drives
 * back the same day; where somebody went that way it counts little. It counts as no pass: odds at
 * forks come from those who drove that way.
 *
 * <p>One thread. Several memories may read one shelf; only one may learn. A {@link RoadMatcher} is
 * told which tiles are others since.
 */
public final class RoadMemory {
  /** The two ways of a road are not always on one slope (estimated: 0.6 %, lanes 4 m apart). */
  private static final double OTHER_WAY_GRADE = 0.006;

  private static final double OTHER_WAY_METRES = 4;

  private static final double METRES_AROUND_LINKS = 300;

  private final RoadGraph graph;

  /** The memory on a shelf. */
  public RoadMemory(TileShelf shelf) {
    graph = new RoadGraph(shelf);
  }

  /**
   * Learns a pass, and saves.
   *
   * @param day on which it was driven
   * @return the tiles that were saved or removed; none if the pass tells no place
   */
  public Set<TileKey> learn(RoadPass pass, LocalDate day) {
    try {
      for (PassCurve curve : PassCurve.of(pass)) {
        learn(curve, true, true, day);
        learn(curve.reversed(OTHER_WAY_GRADE, OTHER_WAY_METRES), false, true, day);
      }
      return graph.tiles().save();
    } catch (RuntimeException failed) {
      graph.tiles().drop(); // what was half learnt is not kept
      throw failed;
    }
  }

  /**
   * Learns a piece of a pass that goes on, and saves. The first piece begins with {@link
   * PassSoFar#nothing}.
   *
   * @param piece beginning where the one before ended
   * @param before what the pieces before left
   * @return what the next piece goes on from
   */
  public PassSoFar learnOn(RoadPass piece, LocalDate day, PassSoFar before) {
    try {
      PassSoFar reached = before;
      for (PassCurve curve : PassCurve.of(piece)) {
        PassSoFar.Ends own = learn(curve, true, true, day);
        join(reached.lastThere(), own.first(), day, true);
        PassCurve back = curve.reversed(OTHER_WAY_GRADE, OTHER_WAY_METRES);
        PassSoFar.Ends other = learn(back, false, true, day);
        join(other.last(), reached.firstBack(), day, false);
        reached =
            new PassSoFar(own.last().or(reached::lastThere), other.first().or(reached::firstBack));
      }
      graph.tiles().save();
      return reached;
    } catch (RuntimeException failed) {
      graph.tiles().drop();
      throw failed;
    }
  }

  /** Links what follows on another, unless the way from one to the other is known. */
  private void join(Optional<Long> from, Optional<Long> to, LocalDate day, boolean isOwnWay) {
    if (from.isPresent()
        && to.isPresent()
        && !from.equals(to)
        && !leads(from.get(), to.get())
        && !leads(to.get(), from.get())) {
      new PassLearner(graph, isOwnWay, true, (int) day.toEpochDay()).link(from, to.get());
    }
  }

  private boolean leads(long from, long to) {
    return graph.links(from).stream()
        .anyMatch(
            link ->
                link.to() == to
                    || graph.links(link.to()).stream().anyMatch(next -> next.to() == to));
  }

  /** Takes a pass as a road of its own that meets no other, not even itself; saves nothing. */
  void append(RoadPass pass) {
    PassCurve.of(pass).forEach(curve -> learn(curve, true, false, LocalDate.EPOCH));
  }

  private PassSoFar.Ends learn(
      PassCurve curve, boolean isOwnWay, boolean isMatched, LocalDate day) {
    PassLearner learner =
        new PassLearner(graph, isOwnWay, isMatched, (int) Math.max(0, day.toEpochDay()));
    Optional<Long> last = Optional.empty();
    for (PassCurve part : isMatched ? Laps.of(curve) : List.of(curve)) {
      last = learner.learn(part, last);
    }
    return new PassSoFar.Ends(learner.first(), last);
  }

  /**
   * Forgets all roads around a place, and saves. Tiles there that could not be read go as a whole.
   *
   * @param latitudeDegrees -89 to 89
   * @param longitudeDegrees -180 to 180
   * @param metres around it, 0 or more
   * @return the tiles that were saved or removed
   */
  public Set<TileKey> forgetAround(double latitudeDegrees, double longitudeDegrees, double metres) {
    try {
      graph.giveUpDamaged(latitudeDegrees, longitudeDegrees, metres);
      FlatGround ground = FlatGround.around(latitudeDegrees, longitudeDegrees);
      for (long id : graph.nodesNear(latitudeDegrees, longitudeDegrees, metres)) {
        graph
            .node(id)
            .map(node -> ground.spot(node.latitudeDegrees(), node.longitudeDegrees()))
            .filter(spot -> Math.hypot(spot.east(), spot.north()) <= metres)
            .ifPresent(_ -> graph.wipe(id));
      }
      graph.unlinkLost(latitudeDegrees, longitudeDegrees, metres + METRES_AROUND_LINKS);
      return graph.tiles().save();
    } catch (RuntimeException failed) {
      graph.tiles().drop();
      throw failed;
    }
  }

  /** Tiles that could not be read so far; roads there count as unknown. */
  public List<DamagedTileException> damaged() {
    return graph.tiles().damaged();
  }

  /** Octets that the tiles at hand take in memory, about. */
  public long octetsAtHand() {
    return graph.tiles().octets();
  }

  RoadGraph graph() {
    return graph;
  }

  /** A shelf that lies in memory and ends with the program. */
  public static TileShelf shelfInMemory() {
    Map<TileKey, byte[]> tiles = new HashMap<>();
    return new TileShelf() {
      @Override
      public Optional<byte[]> load(TileKey key) {
        return Optional.ofNullable(tiles.get(key));
      }

      @Override
      public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
        tiles.putAll(changed);
        tiles.keySet().removeAll(emptied);
      }
    };
  }
}
