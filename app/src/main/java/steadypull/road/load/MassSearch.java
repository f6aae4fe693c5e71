package steadypull.road.load;

import java.util.List;
import steadypull.road.RoadLoad;

/**
 * Finds the mass at which a trip's energy adds up: each round counts in the mass that the one
 * before has found. Stateless.
 */
final class MassSearch {
  private static final double LEAST_KILOGRAMS = 500;
  private static final double MOST_KILOGRAMS = 60_000;
  private static final int ROUNDS = 3;

  /**
   * Torque in per cent is right within 4 % and the driveline's efficiency within 2 % (common
   * practice, no source): both look like mass and no trip tells them apart from it.
   */
  private static final double TORQUE_SHARE = 0.045;

  /** A strong tail wind can make a drag area seem to vanish; so little is left of it at least. */
  private static final double LEAST_DRAG_SHARE = 0.2;

  /** Of a drag area's logarithm: more says nothing any more. */
  private static final double MOST_DRAG_ERROR = 0.6;

  /** A mass that is less certain is not told. */
  private static final double LARGEST_SHARE = 0.2;

  private MassSearch() {}

  /**
   * The finding.
   *
   * @param steps in the order of time, one or more
   * @param assumed where the search begins, and what drag and rolling it assumes
   */
  static RigFinding among(List<HeadStep> steps, RoadLoad assumed) {
    double kilograms = assumed.massKilograms();
    MassFilter.Told told = MassFilter.tell(steps, kilograms, assumed.rollingResistance());
    for (int round = 1; round < ROUNDS && told.lightness() > 0; round++) {
      kilograms = Math.clamp(kilograms / told.lightness(), LEAST_KILOGRAMS, MOST_KILOGRAMS);
      told = MassFilter.tell(steps, kilograms, assumed.rollingResistance());
    }
    double share = Math.hypot(told.lightnessError() / told.lightness(), TORQUE_SHARE);
    double found = kilograms / told.lightness();
    if (!(found > LEAST_KILOGRAMS && found < MOST_KILOGRAMS)) {
      return new RigFinding.CannotTell(RigFinding.Reason.NO_MASS_FITS);
    }
    return share > LARGEST_SHARE
        ? new RigFinding.CannotTell(RigFinding.Reason.TOO_LITTLE_CLIMBED)
        : new RigFinding.Weighed(Interval.ofShare(found, share), dragArea(told, assumed));
  }

  private static Interval dragArea(MassFilter.Told told, RoadLoad assumed) {
    double area = Math.max(LEAST_DRAG_SHARE, told.dragShare());
    double share = Math.hypot(told.dragError() / area, TORQUE_SHARE);
    return Interval.ofShare(
        assumed.dragAreaSquareMetres() * area, Math.min(MOST_DRAG_ERROR, share));
  }
}
