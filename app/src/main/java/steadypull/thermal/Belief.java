package steadypull.thermal;

/**
 * What is believed of one physical parameter: its most probable value and the interval that holds
 * it nine times in ten, in the parameter's own unit. Immutable.
 *
 * @param low 5 % of the belief lies below
 * @param middle half of the belief lies below
 * @param high 5 % of the belief lies above
 */
public record Belief(double low, double middle, double high) {
  /** Nine in ten of a normal distribution lie within so many standard deviations. */
  private static final double NORMAL_90 = 1.6449;

  public Belief {
    if (!(low <= middle && middle <= high)) {
      throw new IllegalArgumentException(
          "A belief is low, middle, high; found %s, %s, %s".formatted(low, middle, high));
    }
  }

  /** The belief that is normal in a parameter's coordinate. */
  static Belief of(Parameter parameter, double coordinate, double deviation) {
    return new Belief(
        parameter.physical(coordinate - NORMAL_90 * deviation),
        parameter.physical(coordinate),
        parameter.physical(coordinate + NORMAL_90 * deviation));
  }

  /** Whether the interval holds a value. */
  public boolean holds(double value) {
    return low <= value && value <= high;
  }
}
