package steadypull.advice;

import java.util.OptionalDouble;

/**
 * What rules may look at beside the readings of the moment. Immutable.
 *
 * @param climbMetres to where the climb begins on which the vehicle is or to which it comes next; 0
 *     on it, empty if none is known
 * @param climbGradePercent its mean grade
 * @param coolerFallPercent by how much less heat a cooler moves than months ago, if that is sure;
 *     else 0
 */
public record Surroundings(
    OptionalDouble climbMetres, OptionalDouble climbGradePercent, double coolerFallPercent) {
  /** Nothing is known of the road or of earlier trips. */
  public static final Surroundings UNKNOWN =
      new Surroundings(OptionalDouble.empty(), OptionalDouble.empty(), 0);
}
