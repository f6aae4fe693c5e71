package steadypull.road.memory;

import java.util.LinkedHashSet;
import java.util.Set;

/** Which tiles lie around a place. Pure functions, any thread. */
public final class TilesAround {
  private static final double METRES_PER_DEGREE = 110_574; // of latitude at the equator: the least
  private static final double NARROWEST = 0.01;

  private TilesAround() {}

  /**
   * The tiles of a square around a place.
   *
   * @param latitudeDegrees -90 to 90
   * @param longitudeDegrees -180 to 180
   * @param metres from the place to each side, 0 or more
   */
  public static Set<TileKey> of(double latitudeDegrees, double longitudeDegrees, double metres) {
    double north = metres / METRES_PER_DEGREE;
    double farthest = Math.min(90, Math.abs(latitudeDegrees) + north);
    double east = north / Math.max(NARROWEST, Math.cos(Math.toRadians(farthest)));
    TileKey southWest = TileKey.of(Math.max(-90, latitudeDegrees - north), longitudeDegrees - east);
    TileKey northEast = TileKey.of(Math.min(90, latitudeDegrees + north), longitudeDegrees + east);
    int columns =
        east >= 180
            ? TileKey.COLUMNS - 1
            : Math.floorMod(northEast.column() - southWest.column(), TileKey.COLUMNS);
    Set<TileKey> keys = new LinkedHashSet<>();
    for (int row = southWest.row(); row <= northEast.row(); row++) {
      for (int column = 0; column <= columns; column++) {
        keys.add(new TileKey(row, (southWest.column() + column) % TileKey.COLUMNS));
      }
    }
    return keys;
  }
}
