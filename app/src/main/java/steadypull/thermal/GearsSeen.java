package steadypull.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The gears that a drive has shown, as engine turns per metre of road, and which of them goes with
 * a load. No gear has to be told: with the converter locked, engine speed and road speed keep to
 * one ratio per gear. Pipeline thread only.
 */
final class GearsSeen {
  /** Slower than this the whole km/h of the speedometer are too coarse. */
  private static final double LOWEST_METRES_PER_SECOND = 8;

  /** Neighbouring gears lie 15 % or more apart (common practice, no source). */
  private static final double SAME_WITHIN = 0.035;

  /** Closer ratios are the same gear, seen through whole km/h (likewise). */
  private static final double LEAST_STEP = 1.1;

  /** A ratio that did not last that long was a gear change or a slipping converter. */
  private static final double LEAST_SECONDS = 10;

  private static final double LONGEST_MEMORY_SECONDS = 300;
  private static final int MOST = 16;

  /** Below this a driver or gearbox shifts down (common practice, no source). */
  private static final double LOWEST_RPM = 1300;

  /** Most diesels of tow vehicles are governed a little above (common practice, no source). */
  private static final double HIGHEST_RPM = 3350;

  /** A gear that nobody has seen yet is some 1.3 times the next one (common practice). */
  private static final double STEP = 1.3;

  private static final class Gear {
    private double rpmPerMetrePerSecond;
    private double seconds;
  }

  private final List<Gear> gears = new ArrayList<>();
  private double highestRpm;

  /** Takes what was seen during some seconds. */
  void accept(double rpm, double metresPerSecond, double seconds) {
    if (metresPerSecond < LOWEST_METRES_PER_SECOND || rpm <= 0) {
      return;
    }
    highestRpm = Math.max(highestRpm, rpm);
    double ratio = rpm / metresPerSecond;
    Gear gear = near(ratio);
    gear.seconds = Math.min(LONGEST_MEMORY_SECONDS, gear.seconds + seconds);
    gear.rpmPerMetrePerSecond +=
        (ratio - gear.rpmPerMetrePerSecond) * Math.min(1, seconds / gear.seconds);
  }

  /** The highest engine speed that was seen in any gear, r/min; 0 if none was. */
  double highestRpm() {
    return highestRpm;
  }

  /**
   * Engine speed in the next lower gear that was seen, r/min; empty if no gear is engaged, none
   * lower was seen, or the engine would turn too fast in it.
   *
   * @param rpm in the present gear
   * @param mostRpm that the engine may turn
   */
  OptionalDouble oneLower(double rpm, double metresPerSecond, double mostRpm) {
    if (rpm <= 0 || metresPerSecond <= 0) {
      return OptionalDouble.empty();
    }
    List<Gear> lasting = gears.stream().filter(gear -> gear.seconds >= LEAST_SECONDS).toList();
    Gear engaged = nearest(lasting, rpm / metresPerSecond);
    if (engaged == null) {
      return OptionalDouble.empty();
    }
    return lasting.stream()
        .mapToDouble(gear -> gear.rpmPerMetrePerSecond / engaged.rpmPerMetrePerSecond)
        .filter(step -> step >= LEAST_STEP)
        .limit(1)
        .map(step -> rpm * step)
        .filter(turning -> turning <= mostRpm)
        .findFirst();
  }

  private Gear near(double ratio) {
    Gear nearest = nearest(gears, ratio);
    return nearest == null ? met(ratio) : nearest;
  }

  private static @Nullable Gear nearest(List<Gear> gears, double ratio) {
    Gear nearest = null;
    for (Gear gear : gears) {
      double beside = Math.abs(gear.rpmPerMetrePerSecond / ratio - 1);
      if (beside < SAME_WITHIN
          && (nearest == null || beside < Math.abs(nearest.rpmPerMetrePerSecond / ratio - 1))) {
        nearest = gear;
      }
    }
    return nearest;
  }

  private Gear met(double ratio) {
    if (gears.size() == MOST) {
      gears.stream()
          .min((left, right) -> Double.compare(left.seconds, right.seconds))
          .ifPresent(gears::remove);
    }
    Gear gear = new Gear();
    gear.rpmPerMetrePerSecond = ratio;
    gears.add(gear);
    gears.sort(
        (left, right) -> Double.compare(left.rpmPerMetrePerSecond, right.rpmPerMetrePerSecond));
    return gear;
  }

  /**
   * Engine speed at which a power is given, r/min: in the highest gear seen that does it with a
   * share of the most torque to spare; in a lower one than any seen if none does.
   *
   * @param mostNewtonMetres the most torque on the plateau
   * @param spare share of the most torque up to which a gear is kept, 0 to 1
   * @param otherwiseRpm where no gear was seen yet
   */
  double rpm(
      double kilowatts,
      double metresPerSecond,
      double mostNewtonMetres,
      double spare,
      double otherwiseRpm) {
    double rpm = 0;
    for (Gear gear : gears) {
      if (gear.seconds >= LEAST_SECONDS) {
        double turning = gear.rpmPerMetrePerSecond * metresPerSecond;
        if (rpm > 0 && turning > HIGHEST_RPM) {
          return rpm;
        }
        rpm = turning;
        if (turning >= LOWEST_RPM
            && kilowatts <= spare * FullPull.kilowatts(mostNewtonMetres, turning)) {
          return rpm;
        }
      }
    }
    return rpm == 0 ? otherwiseRpm : lower(rpm, kilowatts, mostNewtonMetres, spare);
  }

  private static double lower(
      double lowestSeenRpm, double kilowatts, double mostNewtonMetres, double spare) {
    double rpm = lowestSeenRpm;
    while (rpm * STEP <= HIGHEST_RPM
        && (rpm < LOWEST_RPM || kilowatts > spare * FullPull.kilowatts(mostNewtonMetres, rpm))) {
      rpm *= STEP;
    }
    return rpm;
  }
}
