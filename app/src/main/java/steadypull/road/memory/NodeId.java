package steadypull.road.memory;

/** A node's id: its tile's number and its index there. Pure functions, any thread. */
final class NodeId {
  private static final int INDEX_BITS = 24;

  private NodeId() {}

  static long of(TileKey key, int index) {
    return ((long) key.number() << INDEX_BITS) | index;
  }

  static TileKey key(long id) {
    return TileKey.ofNumber((int) (id >> INDEX_BITS));
  }

  static int index(long id) {
    return (int) (id & (Tile.MOST_NODES - 1));
  }
}
