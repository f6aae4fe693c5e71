package steadypull.vehicle;

import java.util.Locale;
import java.util.Objects;
import steadypull.channel.Channels;

/**
 * The cap of the cooling system: it holds coolant under pressure, and so from boiling.
 *
 * @param bar what it holds over the air outside, 0 (open, or leaking) to 3
 * @param provenance where the figure comes from
 */
public record PressureCap(double bar, Provenance provenance) {
  /** Unless somebody says otherwise (common practice, no source). */
  public static final PressureCap USUAL =
      new PressureCap(1.1, new Provenance(Provenance.Kind.DEFAULT, ""));

  /** Coolant in the head is hotter than at its sensor, and gauges err (common practice). */
  static final double MARGIN_KELVIN = 8;

  private static final double KILOPASCALS_PER_BAR = 100;

  public PressureCap {
    Objects.requireNonNull(provenance);
    if (!(bar >= 0 && bar <= 3)) {
      throw new IllegalArgumentException("A cap holds 0 to 3 bar, found " + bar);
    }
  }

  /**
   * Where the coolant boils under this cap, degC.
   *
   * @param kilopascals of the air outside, 20 to 120
   */
  public double boilingCelsius(double kilopascals) {
    return CoolantBoiling.celsius(kilopascals + bar * KILOPASCALS_PER_BAR);
  }

  /** The lower of a limit for engine coolant and the boiling point less its margin. */
  Limit lower(Limit entered, double kilopascals) {
    if (!entered.channel().equals(Channels.ENGINE_COOLANT_TEMP)) {
      return entered;
    }
    double boils = boilingCelsius(kilopascals);
    double counts = boils - MARGIN_KELVIN;
    if (entered.celsius() <= counts) {
      return entered;
    }
    String note =
        String.format(
            Locale.ROOT,
            "boils at %.0f degC at this height, cap %s bar: %.0f counts",
            boils,
            bar,
            counts);
    return new Limit(entered.channel(), counts, new Provenance(provenance.kind(), note));
  }
}
