package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The gap between demanded and delivered torque, and how much of it is new. Thin air, a limited
 * engine or a control unit's own way of counting may leave a gap that heat has no part in: the one
 * that stood before anything was hot is taken off. Pipeline thread only.
 */
final class TorqueGap {
  /** Below this demand nobody asks for power: creeping, coasting, cruise control off. */
  private static final double LEAST_DEMAND_PERCENT = 30;

  /**
   * A gap that stays this long belongs to the engine as it is. A soft derate that begins a little
   * before its limit grows by several points in that time (2 to 4 % a kelvin, common practice), and
   * so is not taken for one.
   */
  private static final double SETTLING_SECONDS = 30;

  private static final double CLOSING_SECONDS = 3;

  private static final double FLOORED_PERCENT = 95;

  /**
   * Without a pedal: so much of the most that was asked for on this drive is about all there is.
   */
  private static final double FULL_DEMAND_SHARE = 0.97;

  /** Torques come in steps of 1 % (SAE J1979, 61 and 62). */
  private static final double STEP_PERCENT = 1;

  /** Down to here the turbocharger makes up for height (common practice, no source). */
  private static final double THIN_AIR_KILOPASCALS = 90;

  /** Without a turbocharger torque falls with the air pressure, 1 % for each kPa. */
  private static final double POINTS_PER_KILOPASCAL = 1;

  private double usualPercent;
  private double usualKilopascals;
  private double mostDemandedPercent;
  private double lastSeconds = Double.NaN;

  /** Forgets nothing but the time that has passed: torque was not told. */
  void pause() {
    lastSeconds = Double.NaN;
  }

  /** Whether all there is is asked for, and given. */
  boolean isFullPowerGiven(PullMoment now) {
    double demanded = now.demandedPercent().orElse(0);
    mostDemandedPercent = Math.max(mostDemandedPercent, demanded);
    boolean isAllAskedFor =
        now.pedalPercent().isPresent()
            ? now.pedalPercent().getAsDouble() >= FLOORED_PERCENT
            : demanded >= FULL_DEMAND_SHARE * mostDemandedPercent;
    return isAllAskedFor
        && demanded >= LEAST_DEMAND_PERCENT
        && demanded - now.deliveredPercent().orElse(0) <= STEP_PERCENT;
  }

  /**
   * What is missing now.
   *
   * @param now with demanded and delivered torque
   * @param referenceNewtonMetres what the percentages refer to, if told
   * @param isHot whether a channel is near its limit
   */
  Shortfall of(PullMoment now, OptionalDouble referenceNewtonMetres, boolean isHot) {
    double demanded = now.demandedPercent().orElseThrow();
    double gap = demanded - now.deliveredPercent().orElseThrow();
    if (demanded < LEAST_DEMAND_PERCENT) {
      pause();
      return new Shortfall.Satisfied();
    }
    follow(now, gap, isHot);
    double grown = Math.max(0, gap - usualPercent - thinner(now));
    return new Shortfall.Missing(gap, grown, loss(now, referenceNewtonMetres, grown));
  }

  private void follow(PullMoment now, double gap, boolean isHot) {
    double step = Double.isNaN(lastSeconds) ? 1 : now.seconds() - lastSeconds;
    lastSeconds = now.seconds();
    double positive = Math.max(0, gap);
    if (positive < usualPercent) {
      approach(positive, step / CLOSING_SECONDS);
    } else if (!isHot) {
      approach(positive, step / SETTLING_SECONDS);
      usualKilopascals = now.kilopascals().orElse(0);
    }
  }

  private void approach(double percent, double spans) {
    usualPercent += (percent - usualPercent) * -Math.expm1(-spans);
  }

  /** Points that the air has lost since the usual gap was seen. */
  private double thinner(PullMoment now) {
    double pressure = now.kilopascals().orElse(THIN_AIR_KILOPASCALS);
    double before = Math.min(THIN_AIR_KILOPASCALS, usualKilopascals);
    return POINTS_PER_KILOPASCAL * Math.max(0, before - pressure);
  }

  private static Optional<Derate.Loss> loss(
      PullMoment now, OptionalDouble referenceNewtonMetres, double percent) {
    return referenceNewtonMetres.isPresent() && now.engineRpm().isPresent()
        ? Optional.of(
            Derate.Loss.of(
                percent / 100 * referenceNewtonMetres.getAsDouble(), now.engineRpm().getAsDouble()))
        : Optional.empty();
  }
}
