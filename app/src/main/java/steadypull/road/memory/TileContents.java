package steadypull.road.memory;

import steadypull.road.FlatGround;

/**
 * How much of roads a tile holds; the two ways of a road count each for itself. Immutable.
 *
 * @param pieces how many places with a grade
 * @param metres length of the ways between them, about
 */
public record TileContents(int pieces, double metres) {
  /** Nothing. */
  public static final TileContents NOTHING = new TileContents(0, 0);

  /** To a neighbouring tile, whose nodes are not at hand, m: as far apart as most nodes are. */
  private static final double USUAL_METRES = 50;

  /**
   * Counts what the octets of a tile hold.
   *
   * @throws DamagedTileException if they are not that tile's, or damaged
   */
  public static TileContents of(TileKey key, byte[] octets) throws DamagedTileException {
    Tile tile = TileFormat.decode(key, octets);
    int pieces = 0;
    double metres = 0;
    for (int index = 0; index < tile.size; index++) {
      if (tile.isKnown(index)) {
        pieces++;
        metres += metresFrom(tile, index);
      }
    }
    return new TileContents(pieces, metres);
  }

  /** Both together. */
  public TileContents plus(TileContents other) {
    return new TileContents(pieces + other.pieces, metres + other.metres);
  }

  /** What is here, and not there. */
  public TileContents minus(TileContents other) {
    return new TileContents(pieces - other.pieces, metres - other.metres);
  }

  private static double metresFrom(Tile tile, int index) {
    int to = tile.linkTo[index];
    if (to == Tile.NO_LINK) {
      return 0;
    }
    return tile.linkStep[index] == Tile.STAY && tile.isKnown(to)
        ? metres(tile, index, to)
        : USUAL_METRES;
  }

  private static double metres(Tile tile, int from, int to) {
    double micros = RoadGraph.MICROS_PER_DEGREE;
    return FlatGround.around(
            tile.latitudeMicros[from] / micros, tile.longitudeMicros[from] / micros)
        .spot(tile.latitudeMicros[to] / micros, tile.longitudeMicros[to] / micros)
        .distanceTo(new FlatGround.Spot(0, 0));
  }
}
