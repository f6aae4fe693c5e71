package steadypull.store.column;

import java.util.BitSet;

/**
 * A grid of pixels that takes lines one pixel wide, without smoothing: J. E. Bresenham, "Algorithm
 * for computer control of a digital plotter", IBM Systems Journal 4(1), 1965, pages 25 to 30 (in
 * the form for all octants; from memory). Knows nothing of buckets.
 */
final class Raster {
  private final int columns;
  private final int rows;
  private final double least;
  private final double greatest;
  private final BitSet pixels;

  Raster(int columns, int rows, double least, double greatest) {
    this.columns = columns;
    this.rows = rows;
    this.least = least;
    this.greatest = greatest;
    this.pixels = new BitSet(columns * rows);
  }

  int row(double value) {
    return (int) Math.round((value - least) / (greatest - least) * (rows - 1));
  }

  void line(int fromColumn, int fromRow, int toColumn, int toRow) {
    int acrossStep = Integer.signum(toColumn - fromColumn);
    int upStep = Integer.signum(toRow - fromRow);
    int across = Math.abs(toColumn - fromColumn);
    int up = -Math.abs(toRow - fromRow);
    int error = across + up;
    int column = fromColumn;
    int row = fromRow;
    set(column, row);
    while (column != toColumn || row != toRow) {
      int twice = 2 * error;
      if (twice >= up) {
        error += up;
        column += acrossStep;
      }
      if (twice <= across) {
        error += across;
        row += upStep;
      }
      set(column, row);
    }
  }

  private void set(int column, int row) {
    pixels.set(row * columns + column);
  }

  boolean has(int column, int row) {
    return column >= 0 && column < columns && pixels.get(row * columns + column);
  }

  /** True if every pixel has one of the other raster in its row, at most a column away. */
  boolean isWithinOneColumnOf(Raster other) {
    for (int pixel = pixels.nextSetBit(0); pixel >= 0; pixel = pixels.nextSetBit(pixel + 1)) {
      int column = pixel % columns;
      int row = pixel / columns;
      if (!other.has(column, row) && !other.has(column - 1, row) && !other.has(column + 1, row)) {
        return false;
      }
    }
    return true;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Raster raster
        && columns == raster.columns
        && rows == raster.rows
        && pixels.equals(raster.pixels);
  }

  @Override
  public int hashCode() {
    return pixels.hashCode();
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("\n");
    for (int row = rows - 1; row >= 0; row--) {
      for (int column = 0; column < columns; column++) {
        text.append(has(column, row) ? '#' : '.');
      }
      text.append('\n');
    }
    return text.toString();
  }
}
