package steadypull.road.memory;

/**
 * A tile of the ground: 0.05 degrees north by 0.05 degrees east. Immutable.
 *
 * @param row counted from the south pole, 0 to 3599
 * @param column counted eastwards from 180 degrees west, 0 to 7199
 */
public record TileKey(int row, int column) {
  static final int ROWS = 3600;
  static final int COLUMNS = 7200;
  static final double TILES_PER_DEGREE = 20;

  public TileKey {
    if (row < 0 || row >= ROWS || column < 0 || column >= COLUMNS) {
      throw new IllegalArgumentException(
          "A tile lies in row 0 to 3599 and column 0 to 7199, found %d, %d".formatted(row, column));
    }
  }

  /** The tile of a place, -90 to 90 degrees north, any degrees east. */
  static TileKey of(double latitudeDegrees, double longitudeDegrees) {
    int row = (int) Math.floor((latitudeDegrees + 90) * TILES_PER_DEGREE);
    int column = (int) Math.floor((longitudeDegrees + 180) * TILES_PER_DEGREE);
    return new TileKey(Math.clamp(row, 0, ROWS - 1), Math.floorMod(column, COLUMNS));
  }

  /** The tile of a number that {@link #number} gave. */
  public static TileKey ofNumber(int number) {
    return new TileKey(number / COLUMNS, number % COLUMNS);
  }

  /** A number of its own for each tile, 0 to 25 919 999. */
  public int number() {
    return row * COLUMNS + column;
  }
}
