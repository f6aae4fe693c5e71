package steadypull.thermal;

import java.util.Arrays;

/**
 * How many times too narrow or wide the bands of a store have shown to be on other drives, before
 * this one has shown anything: logarithms by horizon of {@link BandCalibration#HORIZONS}.
 * Immutable.
 */
final class BandStart {
  private final double[] below;
  private final double[] above;

  private BandStart(double[] below, double[] above) {
    this.below = below;
    this.above = above;
  }

  /** Bands as the models have them. */
  static BandStart asTheyAre() {
    return of(new double[] {1, 1, 1, 1}, new double[] {1, 1, 1, 1});
  }

  /**
   * For the present load held. A load that is held is left for more often than the models think at
   * half a minute and less far at five. Found on six invented hours of towing that no test uses,
   * and drawn a third of the way back to 1, for six are few; how far they may be wrong is what the
   * calibration then finds on each drive.
   */
  static BandStart held(Store store) {
    return switch (store) {
      case CHARGE_INLET -> asTheyAre();
      case CHARGE_AIR ->
          of(new double[] {0.99, 1.03, 0.9, 0.86}, new double[] {1.17, 1.06, 0.83, 0.66});
      case CHARGE_COOLANT ->
          of(new double[] {0.76, 0.75, 0.79, 0.81}, new double[] {1.04, 0.98, 0.8, 0.67});
      case ENGINE_COOLANT ->
          of(new double[] {1.06, 1.15, 1.11, 0.95}, new double[] {1.12, 1.1, 1.03, 0.93});
      case ENGINE_OIL ->
          of(new double[] {1.21, 1.25, 1.13, 0.94}, new double[] {1.21, 1.12, 0.99, 0.84});
      case TRANSMISSION_FLUID ->
          of(new double[] {1.04, 1.07, 1.0, 0.83}, new double[] {1.22, 1.2, 0.99, 0.85});
      case EXHAUST -> of(new double[] {1.5, 1.48, 1.31, 1.23}, new double[] {1.3, 1.23, 1.1, 0.97});
    };
  }

  /** For a road that is known: found likewise. Climbs come as planned, and end a little sooner. */
  static BandStart alongRoad(Store store) {
    return switch (store) {
      case CHARGE_INLET -> asTheyAre();
      case CHARGE_AIR ->
          of(new double[] {1.44, 1.35, 1.17, 1.12}, new double[] {0.7, 0.77, 0.74, 0.77});
      case CHARGE_COOLANT ->
          of(new double[] {0.94, 0.84, 0.69, 0.81}, new double[] {0.76, 0.67, 0.5, 0.5});
      case ENGINE_COOLANT ->
          of(new double[] {1.14, 1.01, 0.77, 0.65}, new double[] {0.76, 0.72, 0.66, 1.0});
      case ENGINE_OIL ->
          of(new double[] {1.48, 1.41, 1.16, 0.95}, new double[] {0.92, 0.83, 0.81, 1.0});
      case TRANSMISSION_FLUID ->
          of(new double[] {1.16, 1.15, 1.0, 0.85}, new double[] {0.72, 0.65, 0.6, 0.8});
      case EXHAUST ->
          of(new double[] {1.14, 1.18, 1.22, 1.15}, new double[] {1.3, 1.38, 1.3, 1.14});
    };
  }

  private static BandStart of(double[] below, double[] above) {
    return new BandStart(logarithms(below), logarithms(above));
  }

  private static double[] logarithms(double[] factors) {
    return Arrays.stream(factors).map(Math::log).toArray();
  }

  /** Logarithms for the lower edge. */
  double[] below() {
    return below.clone();
  }

  /** Logarithms for the upper edge. */
  double[] above() {
    return above.clone();
  }
}
