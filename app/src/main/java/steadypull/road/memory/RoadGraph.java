package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;

/**
 * Nodes and links between them, tile by tile as they are needed. A node's id is its tile's number
 * and its index there. One thread.
 */
final class RoadGraph {
  static final double MICROS_PER_DEGREE = 1e6;
  static final double GRADE_STEPS = 1e5;
  static final double PLACE_STEPS_PER_METRE = 2;

  private static final double METRES_PER_DEGREE = 110_574; // of latitude at the equator: the least

  /** No link leads farther north or south, 1e-6 degrees: some 330 m. */
  private static final int LINK_MICROS = 3000;

  /** From the middle of a tile to beyond the links into it, m. */
  private static final double HALF_TILE_METRES = 4500;

  private final TilesAtHand tiles;

  RoadGraph(TileShelf shelf) {
    tiles = new TilesAtHand(shelf);
  }

  /** Where the tiles come from and go to. */
  TilesAtHand tiles() {
    return tiles;
  }

  /** What is known at a node, or empty if it was forgotten or never was. */
  Optional<RoadNode> node(long id) {
    Tile tile = tiles.tile(NodeId.key(id));
    int index = NodeId.index(id);
    return tile.isKnown(index) ? Optional.of(node(id, tile, index)) : Optional.empty();
  }

  private static RoadNode node(long id, Tile tile, int index) {
    return new RoadNode(
        id,
        tile.latitudeMicros[index] / MICROS_PER_DEGREE,
        tile.longitudeMicros[index] / MICROS_PER_DEGREE,
        (tile.placeError[index] & 0xFF) / PLACE_STEPS_PER_METRE,
        tile.grade[index] / GRADE_STEPS,
        (tile.gradeError[index] & 0xFFFF) / GRADE_STEPS,
        tile.passes[index]);
  }

  /** The ways on from a node; empty where knowledge ends. */
  List<RoadLink> links(long id) {
    TileKey key = NodeId.key(id);
    Tile tile = tiles.tile(key);
    int index = NodeId.index(id);
    if (!tile.isKnown(index) || tile.linkTo[index] == Tile.NO_LINK) {
      return List.of();
    }
    List<RoadLink> links = new ArrayList<>(1);
    add(links, key, index, tile.linkStep[index], tile.linkTo[index], tile.linkCount[index]);
    for (Tile.Extra extra : tile.extras) {
      if (extra.from() == index) {
        add(links, key, index, extra.step(), extra.to(), extra.count());
      }
    }
    return links;
  }

  private void add(List<RoadLink> links, TileKey key, int index, int step, int to, int count) {
    int row = key.row() + step / 3 - 1;
    if (row < 0 || row >= TileKey.ROWS) {
      return;
    }
    TileKey there = new TileKey(row, Math.floorMod(key.column() + step % 3 - 1, TileKey.COLUMNS));
    if (isNear(tiles.tile(key), index, tiles.tile(there), to)) {
      links.add(new RoadLink(NodeId.of(there, to), count));
    }
  }

  /** A node that is not where a link can lead took the place of one that was lost. */
  private static boolean isNear(Tile here, int from, Tile there, int to) {
    return there.isKnown(to)
        && Math.abs(here.latitudeMicros[from] - there.latitudeMicros[to]) <= LINK_MICROS;
  }

  /** The stretches that begin within so many metres of a place, on the ground given. */
  List<Stretch> beginningNear(
      double latitudeDegrees, double longitudeDegrees, double metres, FlatGround ground) {
    List<Stretch> found = new ArrayList<>();
    for (long id : nodesNear(latitudeDegrees, longitudeDegrees, metres)) {
      RoadNode from = node(id).orElseThrow();
      for (RoadLink link : links(id)) {
        node(link.to()).ifPresent(to -> found.add(Stretch.of(from, to, ground)));
      }
    }
    return found;
  }

  /** The nodes in a square of twice that width around a place. */
  List<Long> nodesNear(double latitudeDegrees, double longitudeDegrees, double metres) {
    double north = metres / METRES_PER_DEGREE;
    double east = north / Math.max(0.01, Math.cos(Math.toRadians(latitudeDegrees)));
    List<Long> found = new ArrayList<>();
    for (TileKey key : TilesAround.of(latitudeDegrees, longitudeDegrees, metres)) {
      Tile tile = tiles.tile(key);
      int middleNorth = micros(latitudeDegrees);
      int middleEast = micros(longitudeDegrees);
      int farNorth = micros(north);
      int farEast = micros(east);
      for (int index = 0; index < tile.size; index++) {
        if (Math.abs(tile.latitudeMicros[index] - middleNorth) <= farNorth
            && Math.abs(around(tile.longitudeMicros[index] - (long) middleEast)) <= farEast
            && tile.isKnown(index)) {
          found.add(NodeId.of(key, index));
        }
      }
    }
    return found;
  }

  private static long around(long longitudeMicros) {
    return longitudeMicros > 180_000_000
        ? longitudeMicros - 360_000_000
        : longitudeMicros < -180_000_000 ? longitudeMicros + 360_000_000 : longitudeMicros;
  }

  /** Adds a node and says its id, or empty if its tile takes none. */
  Optional<Long> add(double latitudeDegrees, double longitudeDegrees) {
    TileKey key = TileKey.of(latitudeDegrees, longitudeDegrees);
    Tile tile = tiles.tile(key);
    if (tiles.isDamaged(key) || tile.size >= Tile.MOST_NODES) {
      return Optional.empty();
    }
    int index = tile.grow();
    tiles.changed(key);
    return Optional.of(NodeId.of(key, index));
  }

  /** Writes what is known at a node, with the day of the last pass in days since 1970. */
  void set(RoadNode node, int day) {
    Tile tile = tiles.tile(NodeId.key(node.id()));
    int index = NodeId.index(node.id());
    tile.latitudeMicros[index] = micros(node.latitudeDegrees());
    tile.longitudeMicros[index] = micros(Math.IEEEremainder(node.longitudeDegrees(), 360));
    tile.placeError[index] =
        (byte) Math.clamp(Math.round(node.placeErrorMetres() * PLACE_STEPS_PER_METRE), 1, 255);
    tile.grade[index] = (short) Math.clamp(Math.round(node.grade() * GRADE_STEPS), -32_767, 32_767);
    tile.gradeError[index] =
        (short) Math.clamp(Math.round(node.gradeError() * GRADE_STEPS), 1, 65_535);
    tile.passes[index] = Tile.capped(node.passes());
    tile.day[index] = (short) Math.max(tile.day[index] & 0xFFFF, Math.clamp(day, 0, 65_535));
    tiles.changed(NodeId.key(node.id()));
  }

  /** Counts a way from one node to another, of the same tile or a neighbouring one. */
  void link(long from, long to, int times) {
    TileKey here = NodeId.key(from);
    TileKey there = NodeId.key(to);
    int rows = there.row() - here.row();
    int columns = Math.floorMod(there.column() - here.column() + 1, TileKey.COLUMNS) - 1;
    if (from != to && Math.abs(rows) <= 1 && columns <= 1) {
      tiles
          .tile(here)
          .link(NodeId.index(from), (rows + 1) * 3 + columns + 1, NodeId.index(to), times);
      tiles.changed(here);
    }
  }

  /** Wipes a node; links to it end to exist. */
  void wipe(long id) {
    tiles.tile(NodeId.key(id)).wipe(NodeId.index(id));
    tiles.changed(NodeId.key(id));
  }

  /** Ends links that lead nowhere, from nodes in a square around a place. */
  void unlinkLost(double latitudeDegrees, double longitudeDegrees, double metres) {
    for (long id : nodesNear(latitudeDegrees, longitudeDegrees, metres)) {
      List<RoadLink> alive = links(id);
      Tile tile = tiles.tile(NodeId.key(id));
      int index = NodeId.index(id);
      boolean isAnyLost =
          tile.linkTo[index] != Tile.NO_LINK
              && alive.size()
                  < 1 + tile.extras.stream().filter(extra -> extra.from() == index).count();
      if (isAnyLost) {
        tile.linkTo[index] = Tile.NO_LINK;
        tile.extras.removeIf(extra -> extra.from() == index);
        tiles.changed(NodeId.key(id));
        alive.forEach(link -> link(id, link.to(), link.count()));
      }
    }
  }

  /** Gives up tiles around a place that could not be read, so that they may be learnt anew. */
  void giveUpDamaged(double latitudeDegrees, double longitudeDegrees, double metres) {
    nodesNear(latitudeDegrees, longitudeDegrees, metres); // has them all read
    for (TileKey key : TilesAround.of(latitudeDegrees, longitudeDegrees, metres)) {
      if (tiles.giveUp(key)) {
        unlinkLost(
            (key.row() + 0.5) / TileKey.TILES_PER_DEGREE - 90,
            (key.column() + 0.5) / TileKey.TILES_PER_DEGREE - 180,
            HALF_TILE_METRES);
        tiles.changed(key);
      }
    }
  }

  private static int micros(double degrees) {
    return (int) Math.round(degrees * MICROS_PER_DEGREE);
  }
}
