package steadypull.road.grade;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;

/**
 * Tells the gear from engine speed and road speed, and the converter's slip apart from it.
 * Immutable.
 *
 * <p>n = v / (2 pi r) * 60 * gear * axle while everything is locked. A slipping converter makes the
 * engine turn faster than that, never slower.
 */
final class GearInference {
  /** Tyre wear, load and the speedometer's rounding (common practice, no source). */
  private static final double LOWEST_MATCH = 0.96;

  /** An unlocked converter slips up to 20 % in a heavy pull (common practice, no source). */
  private static final double HIGHEST_MATCH = 1.22;

  /** Within this of the locked ratio it counts as locked: the speedometer's own error. */
  private static final double LOCKED_WITHIN = 0.04;

  /** Below this the whole km/h of the speedometer are too coarse. */
  private static final double LOWEST_METRES_PER_SECOND = 3;

  private final List<Double> gearRatios;
  private final OptionalDouble metresPerSecondPerRpm;

  /** Knows the driveline of one vehicle; tells nothing if ratios or tyre radius are unknown. */
  GearInference(Driveline driveline, Rig rig) {
    this.gearRatios = driveline.gearRatios();
    this.metresPerSecondPerRpm =
        driveline.axleRatio().isPresent() && rig.tyreRadiusMetres().isPresent()
            ? OptionalDouble.of(
                2
                    * Math.PI
                    * rig.tyreRadiusMetres().getAsDouble()
                    / 60
                    / driveline.axleRatio().getAsDouble())
            : OptionalDouble.empty();
  }

  /**
   * A gear that is engaged.
   *
   * @param gear first gear is 1
   * @param slip share of the engine's turns lost in the converter, 0 if locked
   */
  record Engaged(int gear, double slip) {}

  /**
   * The gear, or empty if none fits or too little is known. Two gears may fit when the converter
   * slips; the one with less slip is meant.
   *
   * @param engineRpm engine speed, r/min
   * @param metresPerSecond road speed
   */
  Optional<Engaged> tell(double engineRpm, double metresPerSecond) {
    if (metresPerSecondPerRpm.isEmpty() || metresPerSecond < LOWEST_METRES_PER_SECOND) {
      return Optional.empty();
    }
    double turns = engineRpm * metresPerSecondPerRpm.getAsDouble() / metresPerSecond;
    Optional<Engaged> nearest = Optional.empty();
    double nearestDistance = Double.POSITIVE_INFINITY;
    for (int index = 0; index < gearRatios.size(); index++) {
      double match = turns / gearRatios.get(index);
      double distance = Math.abs(match - 1);
      if (match >= LOWEST_MATCH && match <= HIGHEST_MATCH && distance < nearestDistance) {
        nearest = Optional.of(new Engaged(index + 1, slip(match)));
        nearestDistance = distance;
      }
    }
    return nearest;
  }

  private static double slip(double match) {
    return match <= 1 + LOCKED_WITHIN ? 0 : 1 - 1 / match;
  }
}
