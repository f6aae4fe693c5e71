package steadypull.thermal;

import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.LatestSamples;

/**
 * The most that this engine gives: what the pedal on the floor has shown, else a usual share of the
 * reference torque, never less than what was seen. Pipeline thread only.
 */
final class FullPull {
  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  /**
   * The reference torque is indicated torque: friction takes 6 to 10 %, and few engines reach it in
   * use (common practice, no source).
   */
  private static final double SHARE_OF_REFERENCE = 0.84;

  private static final double FLOORED_PERCENT = 97;
  private static final double FRESH_SECONDS = 3;

  /** Boost has built up by then (common practice: turbo lag 2 to 4 s). */
  private static final double BOOST_SECONDS = 5;

  /** A tow vehicle of which nothing is known (common practice, no source). */
  private static final double USUAL_NEWTON_METRES = 550;

  /**
   * Full-load torque of a turbo-diesel against its plateau (common practice, no source): r/min,
   * then share.
   */
  private static final double[] RPM = {600, 1000, 1400, 1600, 2600, 3200, 3800, 4300};

  private static final double[] SHARE = {0.35, 0.58, 0.88, 1, 1, 0.9, 0.62, 0.1};

  private double seenNewtonMetres;
  private double flooredNewtonMetres;
  private double flooredSeconds;
  private OptionalDouble referenceNewtonMetres = OptionalDouble.empty();

  /**
   * Takes what the engine gave during some seconds.
   *
   * @param isCut whether the engine control takes torque away
   */
  void accept(
      LatestSamples samples,
      long timeMicros,
      double kilowatts,
      double rpm,
      boolean isCut,
      double seconds) {
    referenceNewtonMetres = samples.ever(Channels.REFERENCE_TORQUE);
    if (rpm < RPM[0] || isCut) {
      return;
    }
    double plateau = kilowatts * NEWTON_METRE_RPM_PER_KILOWATT / rpm / share(rpm);
    seenNewtonMetres = Math.max(seenNewtonMetres, plateau);
    boolean isFloored =
        samples.within(Channels.ACCELERATOR_PEDAL, timeMicros, FRESH_SECONDS).orElse(0)
            >= FLOORED_PERCENT;
    flooredSeconds = isFloored ? flooredSeconds + seconds : 0;
    if (flooredSeconds > BOOST_SECONDS) {
      flooredNewtonMetres =
          flooredNewtonMetres == 0
              ? plateau
              : flooredNewtonMetres + (plateau - flooredNewtonMetres) * 0.05;
    }
  }

  /** Whether the pedal on the floor has shown it. */
  boolean isShown() {
    return flooredNewtonMetres > 0;
  }

  /** The most torque on the plateau, N.m. */
  double newtonMetres() {
    if (isShown()) {
      return flooredNewtonMetres;
    }
    double usual =
        referenceNewtonMetres.isPresent()
            ? SHARE_OF_REFERENCE * referenceNewtonMetres.getAsDouble()
            : USUAL_NEWTON_METRES;
    return Math.max(usual, seenNewtonMetres);
  }

  /** The most power at an engine speed, kW. */
  double kilowatts(double rpm) {
    return newtonMetres() * share(rpm) * rpm / NEWTON_METRE_RPM_PER_KILOWATT;
  }

  /** The least engine speed from a present one upwards that gives a power, r/min. */
  double rpmFor(double kilowatts, double rpm) {
    return Math.max(rpm, kilowatts * NEWTON_METRE_RPM_PER_KILOWATT / newtonMetres());
  }

  private static double share(double rpm) {
    if (rpm <= RPM[0]) {
      return SHARE[0];
    }
    for (int i = 1; i < RPM.length; i++) {
      if (rpm <= RPM[i]) {
        double part = (rpm - RPM[i - 1]) / (RPM[i] - RPM[i - 1]);
        return SHARE[i - 1] + part * (SHARE[i] - SHARE[i - 1]);
      }
    }
    return SHARE[SHARE.length - 1];
  }
}
