package steadypull.compare;

import java.util.OptionalDouble;

/**
 * What somebody wants a comparison brought to. Immutable.
 *
 * @param outsideCelsius outside air, degC; empty: between that of both sides
 * @param limitCelsius against which times to the limit count, degC; empty: the vehicle's own
 */
public record Conditions(OptionalDouble outsideCelsius, OptionalDouble limitCelsius) {
  /** As the runs were driven, with the vehicle's limit. */
  public static final Conditions OF_THE_RUNS =
      new Conditions(OptionalDouble.empty(), OptionalDouble.empty());
}
