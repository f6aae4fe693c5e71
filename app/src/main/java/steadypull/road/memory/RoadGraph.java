package steadypull.road.memory;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadypull.road.FlatGround;

/**
 * Nodes and links between them, tile by tile as they are needed. A node's id is its tile's number
 * and its index there. One thread.
 */
final class RoadGraph {
  static final double MICROS_PER_DEGREE = 1e6;
  static final double GRADE_STEPS = 1e5;
  static final double PLACE_STEPS_PER_METRE = 2;

  private static final int INDEX_BITS = 24;
  private static final double METRES_PER_DEGREE = 110_574; // of latitude at the equator: the least

  /** Tiles kept in memory: those around a vehicle and along what lies 15 km ahead. */
  private static final int TILES_AT_HAND = 48;

  /** No link leads farther north or south, 1e-6 degrees: some 330 m. */
  private static final int LINK_MICROS = 3000;

  /** From the middle of a tile to beyond the links into it, m. */
  private static final double HALF_TILE_METRES = 4500;

  private final TileShelf shelf;
  private final Map<TileKey, Tile> atHand = new LinkedHashMap<>(64, 0.75f, true);
  private final Set<TileKey> changed = new LinkedHashSet<>();
  private final Map<TileKey, DamagedTileException> damaged = new LinkedHashMap<>();

  RoadGraph(TileShelf shelf) {
    this.shelf = shelf;
  }

  /** What is known at a node, or empty if it was forgotten or never was. */
  Optional<RoadNode> node(long id) {
    Tile tile = tile(key(id));
    int index = index(id);
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
    TileKey key = key(id);
    Tile tile = tile(key);
    int index = index(id);
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
    if (isNear(tile(key), index, tile(there), to)) {
      links.add(new RoadLink(id(there, to), count));
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
    for (TileKey key : keysAround(latitudeDegrees, longitudeDegrees, north, east)) {
      Tile tile = tile(key);
      int middleNorth = micros(latitudeDegrees);
      int middleEast = micros(longitudeDegrees);
      int farNorth = micros(north);
      int farEast = micros(east);
      for (int index = 0; index < tile.size; index++) {
        if (Math.abs(tile.latitudeMicros[index] - middleNorth) <= farNorth
            && Math.abs(around(tile.longitudeMicros[index] - (long) middleEast)) <= farEast
            && tile.isKnown(index)) {
          found.add(id(key, index));
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

  private static Set<TileKey> keysAround(
      double latitude, double longitude, double north, double east) {
    TileKey southWest = TileKey.of(Math.max(-90, latitude - north), longitude - east);
    TileKey northEast = TileKey.of(Math.min(90, latitude + north), longitude + east);
    int columns = Math.floorMod(northEast.column() - southWest.column(), TileKey.COLUMNS);
    Set<TileKey> keys = new LinkedHashSet<>();
    for (int row = southWest.row(); row <= northEast.row(); row++) {
      for (int column = 0; column <= columns; column++) {
        keys.add(new TileKey(row, (southWest.column() + column) % TileKey.COLUMNS));
      }
    }
    return keys;
  }

  /** Adds a node and says its id, or empty if its tile takes none. */
  Optional<Long> add(double latitudeDegrees, double longitudeDegrees) {
    TileKey key = TileKey.of(latitudeDegrees, longitudeDegrees);
    Tile tile = tile(key);
    if (damaged.containsKey(key) || tile.size >= Tile.MOST_NODES) {
      return Optional.empty();
    }
    int index = tile.grow();
    changed.add(key);
    return Optional.of(id(key, index));
  }

  /** Writes what is known at a node, with the day of the last pass in days since 1970. */
  void set(RoadNode node, int day) {
    Tile tile = tile(key(node.id()));
    int index = index(node.id());
    tile.latitudeMicros[index] = micros(node.latitudeDegrees());
    tile.longitudeMicros[index] = micros(Math.IEEEremainder(node.longitudeDegrees(), 360));
    tile.placeError[index] =
        (byte) Math.clamp(Math.round(node.placeErrorMetres() * PLACE_STEPS_PER_METRE), 1, 255);
    tile.grade[index] = (short) Math.clamp(Math.round(node.grade() * GRADE_STEPS), -32_767, 32_767);
    tile.gradeError[index] =
        (short) Math.clamp(Math.round(node.gradeError() * GRADE_STEPS), 1, 65_535);
    tile.passes[index] = Tile.capped(node.passes());
    tile.day[index] = (short) Math.max(tile.day[index] & 0xFFFF, Math.clamp(day, 0, 65_535));
    changed.add(key(node.id()));
  }

  /** Counts a way from one node to another, of the same tile or a neighbouring one. */
  void link(long from, long to, int times) {
    TileKey here = key(from);
    TileKey there = key(to);
    int rows = there.row() - here.row();
    int columns = Math.floorMod(there.column() - here.column() + 1, TileKey.COLUMNS) - 1;
    if (from != to && Math.abs(rows) <= 1 && columns <= 1) {
      tile(here).link(index(from), (rows + 1) * 3 + columns + 1, index(to), times);
      changed.add(here);
    }
  }

  /** Wipes a node; links to it end to exist. */
  void wipe(long id) {
    tile(key(id)).wipe(index(id));
    changed.add(key(id));
  }

  /** Ends links that lead nowhere, from nodes in a square around a place. */
  void unlinkLost(double latitudeDegrees, double longitudeDegrees, double metres) {
    for (long id : nodesNear(latitudeDegrees, longitudeDegrees, metres)) {
      List<RoadLink> alive = links(id);
      Tile tile = tile(key(id));
      int index = index(id);
      boolean isAnyLost =
          tile.linkTo[index] != Tile.NO_LINK
              && alive.size()
                  < 1 + tile.extras.stream().filter(extra -> extra.from() == index).count();
      if (isAnyLost) {
        tile.linkTo[index] = Tile.NO_LINK;
        tile.extras.removeIf(extra -> extra.from() == index);
        changed.add(key(id));
        alive.forEach(link -> link(id, link.to(), link.count()));
      }
    }
  }

  /** Gives up tiles around a place that could not be read, so that they may be learnt anew. */
  void giveUpDamaged(double latitudeDegrees, double longitudeDegrees, double metres) {
    nodesNear(latitudeDegrees, longitudeDegrees, metres); // has them all read
    double north = metres / METRES_PER_DEGREE;
    double east = north / Math.max(0.01, Math.cos(Math.toRadians(latitudeDegrees)));
    for (TileKey key : keysAround(latitudeDegrees, longitudeDegrees, north, east)) {
      if (damaged.remove(key) != null) {
        unlinkLost(
            (key.row() + 0.5) / TileKey.TILES_PER_DEGREE - 90,
            (key.column() + 0.5) / TileKey.TILES_PER_DEGREE - 180,
            HALF_TILE_METRES);
        changed.add(key);
      }
    }
  }

  /** Puts what has changed on the shelf and says which tiles these were. */
  Set<TileKey> save() {
    Set<TileKey> saved = new HashSet<>(changed);
    saved.removeAll(damaged.keySet());
    if (!saved.isEmpty()) {
      Map<TileKey, byte[]> filled = new LinkedHashMap<>();
      Set<TileKey> emptied = new LinkedHashSet<>();
      for (TileKey key : saved) {
        Tile tile = tile(key);
        if (tile.isEmpty()) {
          emptied.add(key);
        } else {
          filled.put(key, TileFormat.encode(key, tile));
        }
      }
      shelf.save(filled, emptied);
      emptied.forEach(atHand::remove);
    }
    changed.clear();
    trim();
    return saved;
  }

  /** Forgets all that was not saved. */
  void drop() {
    atHand.clear();
    damaged.clear();
    changed.clear();
  }

  /** Reads those tiles anew when they are asked for. */
  void reread(Set<TileKey> keys) {
    keys.forEach(
        key -> {
          atHand.remove(key);
          damaged.remove(key);
        });
  }

  /** Tiles that could not be read, with what was found. */
  List<DamagedTileException> damaged() {
    return List.copyOf(damaged.values());
  }

  /** Octets of the tiles in memory, about. */
  long octets() {
    return atHand.values().stream().mapToLong(Tile::octets).sum();
  }

  /** How many tiles are in memory. */
  int tilesAtHand() {
    return atHand.size();
  }

  private Tile tile(TileKey key) {
    Tile tile = atHand.get(key);
    if (tile == null) {
      tile = load(key);
      trim();
      atHand.put(key, tile);
    }
    return tile;
  }

  private Tile load(TileKey key) {
    Optional<byte[]> octets = shelf.load(key);
    if (octets.isEmpty() || damaged.containsKey(key)) {
      return new Tile();
    }
    try {
      return TileFormat.decode(key, octets.get());
    } catch (DamagedTileException broken) {
      damaged.put(key, broken);
      return new Tile();
    }
  }

  private void trim() {
    if (changed.isEmpty()) {
      var eldest = atHand.keySet().iterator();
      while (atHand.size() >= TILES_AT_HAND && eldest.hasNext()) {
        eldest.next();
        eldest.remove();
      }
    }
  }

  private static int micros(double degrees) {
    return (int) Math.round(degrees * MICROS_PER_DEGREE);
  }

  private static long id(TileKey key, int index) {
    return ((long) key.number() << INDEX_BITS) | index;
  }

  private static TileKey key(long id) {
    return TileKey.ofNumber((int) (id >> INDEX_BITS));
  }

  private static int index(long id) {
    return (int) (id & (Tile.MOST_NODES - 1));
  }
}
