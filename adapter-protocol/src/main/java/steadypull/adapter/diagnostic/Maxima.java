package steadypull.adapter.diagnostic;

import java.util.OptionalDouble;
import steadypull.adapter.frame.Payload;

/**
 * Full-scale values that a control unit declares in parameters 4F and 50; where they are there,
 * parameters 0B and 10 are scaled by them. Immutable.
 *
 * @param manifoldKilopascals full scale of parameter 0B
 * @param airFlowGramsPerSecond full scale of parameter 10
 */
public record Maxima(OptionalDouble manifoldKilopascals, OptionalDouble airFlowGramsPerSecond) {
  public static final int MANIFOLD_PARAMETER = 0x4F;
  public static final int AIR_FLOW_PARAMETER = 0x50;

  /** Nothing declared: the table's own scaling. */
  public static Maxima none() {
    return new Maxima(OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** Takes parameter 4F: the fourth byte times 10 kPa; zero means not declared. */
  public Maxima withManifold(Payload data) {
    return new Maxima(declared(data, 3), airFlowGramsPerSecond);
  }

  /** Takes parameter 50: the first byte times 10 g/s; zero means not declared. */
  public Maxima withAirFlow(Payload data) {
    return new Maxima(manifoldKilopascals, declared(data, 0));
  }

  private static OptionalDouble declared(Payload data, int index) {
    return data.size() > index && data.at(index) != 0
        ? OptionalDouble.of(data.at(index) * 10.0)
        : OptionalDouble.empty();
  }

  double scale(int parameter, double usual) {
    return switch (parameter) {
      case 0x0B -> manifoldKilopascals.stream().map(full -> full / 255).findFirst().orElse(usual);
      case 0x10 ->
          airFlowGramsPerSecond.stream().map(full -> full / 65_535).findFirst().orElse(usual);
      default -> usual;
    };
  }
}
