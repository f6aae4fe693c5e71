package steadypull.vehicle;

import java.util.Objects;

/**
 * What one trip alone says of a quantity, without what was believed before it. Immutable.
 *
 * @param quantity which
 * @param coordinate most likely one by this trip
 * @param spread standard deviation in the coordinate; above 0
 */
public record HeatTold(HeatQuantity quantity, double coordinate, double spread) {
  public HeatTold {
    Objects.requireNonNull(quantity);
    if (!Double.isFinite(coordinate) || !(spread > 0 && spread < 1e6)) {
      throw new IllegalArgumentException(
          "A trip tells a coordinate and a spread above 0, found %s and %s"
              .formatted(coordinate, spread));
    }
  }
}
