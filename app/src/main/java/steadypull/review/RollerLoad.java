package steadypull.review;

import java.util.OptionalDouble;
import steadypull.road.climb.Climb;

/**
 * Tells a dynamometer from a road where no receiver does: the torque balance takes the rollers'
 * load for a climb, but the air pressure stays. Stateless.
 */
final class RollerLoad {
  /** Air at 1000 m weighs 1.1 kg/m3: 10.9 Pa for each metre (ISO 2533, table of densities). */
  private static final double KILOPASCALS_PER_METRE = 0.0109;

  /** Two readings in whole kPa, half a kPa each, and as much for the weather (our choice). */
  private static final double DOUBT_KILOPASCALS = 1.5;

  private RollerLoad() {}

  /** Whether a climb without any place can be none; below 140 m of rise that cannot be told. */
  static boolean isOnRollers(Climb climb, DriveTrace trace) {
    OptionalDouble fall =
        trace.pressureFallKilopascals(TimeSpan.ofSeconds(climb.startSeconds(), climb.endSeconds()));
    return climb.spots().isEmpty()
        && fall.isPresent()
        && climb.riseMetres() * KILOPASCALS_PER_METRE - fall.getAsDouble() >= DOUBT_KILOPASCALS;
  }
}
