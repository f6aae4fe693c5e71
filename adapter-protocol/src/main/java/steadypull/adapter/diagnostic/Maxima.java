package steadypull.adapter.diagnostic;

import java.util.OptionalDouble;
import steadypull.adapter.frame.Octets;

/**
 * What one control unit's scaling depends on: the full-scale values that it declares in parameters
 * 4F and 50 for parameters 0B and 10, and what its turbo speed was seen to be counted in.
 * Immutable.
 *
 * @param manifoldKilopascals full scale of parameter 0B
 * @param airFlowGramsPerSecond full scale of parameter 10
 * @param countsSingleTurns whether parameter 74 counts r/min one by one instead of in tens
 */
public record Maxima(
    OptionalDouble manifoldKilopascals,
    OptionalDouble airFlowGramsPerSecond,
    boolean countsSingleTurns) {
  public static final int MANIFOLD_PARAMETER = 0x4F;
  public static final int AIR_FLOW_PARAMETER = 0x50;
  public static final int TURBO_SPEED_PARAMETER = 0x74;

  /**
   * No turbocharger of a road vehicle turns faster than 250 000 r/min (common practice, no source),
   * which is 25 000 in tens.
   */
  private static final long MOST_TENS_OF_TURNS = 25_000;

  /** Nothing declared: the table's own scaling. */
  public static Maxima none() {
    return new Maxima(OptionalDouble.empty(), OptionalDouble.empty(), false);
  }

  /** Takes parameter 4F: the fourth byte times 10 kPa; zero means not declared. */
  public Maxima withManifold(Octets data) {
    return new Maxima(declared(data, 3), airFlowGramsPerSecond, countsSingleTurns);
  }

  /** Takes parameter 50: the first byte times 10 g/s; zero means not declared. */
  public Maxima withAirFlow(Octets data) {
    return new Maxima(manifoldKilopascals, declared(data, 0), countsSingleTurns);
  }

  /**
   * Takes parameter 74, for which published sources disagree (10 r/min a bit in makers' tables, 1
   * in the cases of SAE J1699-3): tens until a number comes that tens would make too fast.
   */
  public Maxima withTurboSpeed(Octets data) {
    return countsSingleTurns || (!isTooFast(data, 0, 8) && !isTooFast(data, 1, 24))
        ? this
        : new Maxima(manifoldKilopascals, airFlowGramsPerSecond, true);
  }

  private static boolean isTooFast(Octets data, int sensorBit, int firstBit) {
    boolean isFitted = data.size() > 0 && ((data.at(0) >> sensorBit) & 1) == 1;
    return isFitted
        && new BitField(firstBit, 16, false).extract(data).orElse(0) > MOST_TENS_OF_TURNS;
  }

  private static OptionalDouble declared(Octets data, int index) {
    return data.size() > index && data.at(index) != 0
        ? OptionalDouble.of(data.at(index) * 10.0)
        : OptionalDouble.empty();
  }

  double scale(int parameter, double usual) {
    return switch (parameter) {
      case 0x0B ->
          manifoldKilopascals.isPresent() ? manifoldKilopascals.getAsDouble() / 255 : usual;
      case 0x10 ->
          airFlowGramsPerSecond.isPresent() ? airFlowGramsPerSecond.getAsDouble() / 65_535 : usual;
      case TURBO_SPEED_PARAMETER -> countsSingleTurns ? 1 : usual;
      default -> usual;
    };
  }
}
