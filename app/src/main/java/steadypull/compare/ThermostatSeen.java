package steadypull.compare;

import java.util.Arrays;
import java.util.OptionalDouble;
import steadypull.channel.Channels;

/** Tells from the coolant whether the engine's thermostat was fully open in a run. */
final class ThermostatSeen {
  /** Below it an engine is not warm. */
  private static final double WARM_CELSIUS = 75;

  /** From beginning to full opening of a wax thermostat 8 to 12 K (common practice, no source). */
  private static final double OPENING_KELVIN = 10;

  /** One that begins at 90 is open here for certain (common practice: 80 to 90 degC). */
  private static final double OPEN_FOR_CERTAIN_CELSIUS = 102;

  /** The first half of the opening does most of the work. */
  private static final double REGULATING_KELVIN = 5;

  private static final double STEADY_KELVIN_PER_SECOND = 1.0 / 60;

  /** So near to what is usual, warming up has ended. */
  private static final double WARMED_UP_KELVIN = 3;

  private static final int LEAST_SECONDS = 60;

  private ThermostatSeen() {}

  static Thermostat of(TripSeconds trip, Stretch stretch) {
    double[] half =
        trip.span(
            Channels.ENGINE_COOLANT_TEMP, (stretch.onset() + stretch.end()) / 2, stretch.end());
    OptionalDouble middle = Figures.median(half);
    OptionalDouble kept = kept(trip);
    if (middle.isEmpty() || kept.isEmpty() || middle.getAsDouble() < WARM_CELSIUS) {
      return Thermostat.UNKNOWN;
    }
    double open = Math.min(kept.getAsDouble() + OPENING_KELVIN, OPEN_FOR_CERTAIN_CELSIUS);
    if (middle.getAsDouble() >= open) {
      return Thermostat.OPEN;
    }
    boolean isSteady =
        Math.abs(Figures.slope(half).orElse(Double.MAX_VALUE)) <= STEADY_KELVIN_PER_SECOND;
    return isSteady && middle.getAsDouble() <= kept.getAsDouble() + REGULATING_KELVIN
        ? Thermostat.REGULATING
        : Thermostat.UNKNOWN;
  }

  /**
   * What the thermostat keeps at little load: the low end of the temperatures once the engine has
   * warmed up.
   */
  private static OptionalDouble kept(TripSeconds trip) {
    double[] all = trip.span(Channels.ENGINE_COOLANT_TEMP, 0, trip.seconds());
    double usual =
        Figures.median(Arrays.stream(all).filter(celsius -> celsius >= WARM_CELSIUS).toArray())
            .orElse(Double.POSITIVE_INFINITY);
    int warm = 0;
    while (warm < all.length && !(all[warm] >= usual - WARMED_UP_KELVIN)) {
      warm++;
    }
    double[] sorted =
        Arrays.stream(all, warm, all.length)
            .filter(celsius -> celsius >= WARM_CELSIUS)
            .sorted()
            .toArray();
    return sorted.length < LEAST_SECONDS
        ? OptionalDouble.empty()
        : OptionalDouble.of(sorted[sorted.length / 10]);
  }
}
