package steadypull.compare;

import java.util.Random;

/**
 * What the readings of no run can tell of the heat, as one draw takes it. Immutable.
 *
 * @param compressorEfficiency 0.5 to 0.9
 * @param arrivesSeconds how slowly the heat of a load that comes on arrives, s
 * @param scale true heat over told heat, above 0; J/K and W/K go with it
 */
record HeatDraw(double compressorEfficiency, double arrivesSeconds, double scale) {
  /** Usual efficiency of a compressor, 0.62 to 0.78 (common practice, no source). */
  static final double COMPRESSOR_EFFICIENCY = 0.70;

  private static final double COMPRESSOR_DEVIATION = 0.04;

  /** Housing, pipe and sensor take the air's temperature this slowly (common practice 5 to 25). */
  private static final double ARRIVES_SECONDS = 9;

  private static final double ARRIVES_SHARE = 0.35;

  /** The usual one. */
  static final HeatDraw USUAL = new HeatDraw(COMPRESSOR_EFFICIENCY, ARRIVES_SECONDS, 1);

  /** One that is as likely. */
  static HeatDraw of(Random random, HeatSource source) {
    double scaled = source.isAbsolute() ? source.relativeError() * bounded(random) : 0;
    return new HeatDraw(
        COMPRESSOR_EFFICIENCY + COMPRESSOR_DEVIATION * bounded(random),
        ARRIVES_SECONDS * Math.exp(ARRIVES_SHARE * bounded(random)),
        Math.exp(scaled));
  }

  private static double bounded(Random random) {
    return Math.clamp(random.nextGaussian(), -3.0, 3.0);
  }
}
