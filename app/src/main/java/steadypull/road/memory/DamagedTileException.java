package steadypull.road.memory;

/**
 * Octets that are no whole tile: cut off, changed, or of a newer form. The message says what was
 * tried, expected and found, and what to do.
 */
public final class DamagedTileException extends Exception {
  private static final long serialVersionUID = 1;

  DamagedTileException(TileKey key, String expected, String found) {
    super(
        ("Could not read what is remembered of the roads in tile %d/%d: expected %s, found %s."
                + " Roads there count as unknown and the tile is left as it is; all other roads"
                + " are not touched by it. Forget the roads around that place to let it be learnt"
                + " anew.")
            .formatted(key.row(), key.column(), expected, found));
  }
}
