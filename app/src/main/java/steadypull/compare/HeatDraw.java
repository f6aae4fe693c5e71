package steadypull.compare;

import java.util.Random;

/**
 * What the readings of no run can tell of the heat, as one draw takes it. Immutable.
 *
 * @param compressorEfficiency 0.5 to 0.9
 * @param arrivesSeconds how slowly the heat of a load that comes on arrives, s
 * @param uneven how far the heat capacities of the sides differ by their unlike warmth alone, a
 *     logarithm
 * @param effectiveness what a cooler takes more than told, a share of the whole, on each side
 * @param besideKelvin what is counted to one part of the gain and belongs to the other
 * @param formKelvin by what the form of the model is wrong about a gain
 * @param scale true heat over told heat, above 0; J/K and W/K go with it
 */
record HeatDraw(
    double compressorEfficiency,
    double arrivesSeconds,
    double scale,
    double uneven,
    double besideKelvin,
    double formKelvin,
    BothSides<Double> effectiveness) {
  /** Usual efficiency of a compressor, 0.62 to 0.78 (common practice, no source). */
  static final double COMPRESSOR_EFFICIENCY = 0.70;

  private static final double COMPRESSOR_DEVIATION = 0.04;

  /** Housing, pipe and sensor take the air's temperature this slowly (common practice 5 to 25). */
  private static final double ARRIVES_SECONDS = 9;

  private static final double ARRIVES_SHARE = 0.35;

  /**
   * No store is one lump: what a fit takes for its capacity differs by so much between two coolers
   * of one capacity (estimated).
   */
  private static final double UNEVEN_SHARE = 0.03;

  /** Half a degree of each sensor in a hundred between air and water (estimated). */
  private static final double EFFECTIVENESS_ERROR = 0.005;

  /** No split of a gain is told nearer than this, K (estimated). */
  private static final double BESIDE_KELVIN = 0.1;

  /** No gain is told nearer than this, K: steps of one degree, and stores that are no lump. */
  private static final double FORM_KELVIN = 0.06;

  /** The usual one. */
  static final HeatDraw USUAL =
      new HeatDraw(COMPRESSOR_EFFICIENCY, ARRIVES_SECONDS, 1, 0, 0, 0, new BothSides<>(0.0, 0.0));

  /** One that is as likely. */
  static HeatDraw of(Random random, HeatSource source) {
    double scaled = source.isAbsolute() ? source.relativeError() * bounded(random) : 0;
    return new HeatDraw(
        COMPRESSOR_EFFICIENCY + COMPRESSOR_DEVIATION * bounded(random),
        ARRIVES_SECONDS * Math.exp(ARRIVES_SHARE * bounded(random)),
        Math.exp(scaled),
        UNEVEN_SHARE * bounded(random),
        BESIDE_KELVIN * bounded(random),
        FORM_KELVIN * bounded(random),
        new BothSides<>(
            EFFECTIVENESS_ERROR * bounded(random), EFFECTIVENESS_ERROR * bounded(random)));
  }

  private static double bounded(Random random) {
    return Math.clamp(random.nextGaussian(), -3.0, 3.0);
  }
}
