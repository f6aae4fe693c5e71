package steadypull.vehicle;

import java.util.Objects;

/**
 * One physical quantity of a vehicle's heat and what is believed of it before the vehicle has shown
 * anything. Beliefs are normal in a coordinate: the natural logarithm of what cannot be negative,
 * else the quantity itself. Immutable.
 *
 * @param id the same in every version and library as long as the quantity means the same; ends with
 *     its unit, such as {@code charge_coolant.conductance_W_per_K}
 * @param circuit the part of the cooling that it belongs to
 * @param logarithmic whether the coordinate is the natural logarithm
 * @param usual coordinate in the middle of the layout's belief
 * @param spread standard deviation of that belief, in the coordinate; above 0
 */
public record HeatQuantity(
    String id, Circuit circuit, boolean logarithmic, double usual, double spread) {
  public HeatQuantity {
    Objects.requireNonNull(circuit);
    if (!id.matches("[a-z_]+\\.[A-Za-z_]+")) {
      throw new IllegalArgumentException(
          "A quantity of heat has an id such as charge_coolant.conductance_W_per_K, found " + id);
    }
    if (!Double.isFinite(usual) || !(spread > 0 && spread < 1e6)) {
      throw new IllegalArgumentException(
          "A belief has a middle and a spread above 0, found %s and %s".formatted(usual, spread));
    }
  }

  /** The quantity in its own unit at a coordinate. */
  public double physical(double coordinate) {
    return logarithmic ? Math.exp(coordinate) : coordinate;
  }
}
