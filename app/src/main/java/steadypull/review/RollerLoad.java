package steadypull.review;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.road.FlatGround;
import steadypull.road.climb.Climb;

/**
 * Tells a dynamometer from a road: the torque balance takes the rollers' load for a climb, but the
 * vehicle stays where it is, and so does the air pressure. Stateless.
 */
final class RollerLoad {
  /** Air at 1000 m weighs 1.1 kg/m3: 10.9 Pa for each metre (ISO 2533, table of densities). */
  private static final double KILOPASCALS_PER_METRE = 0.0109;

  /** Two readings in whole kPa, half a kPa each, and as much for the weather (our choice). */
  private static final double DOUBT_KILOPASCALS = 1.5;

  /** One reading in whole kPa may flip by itself; a fall by two is a rise of the road. */
  private static final double RISEN_KILOPASCALS = 2;

  /**
   * No road climbs 500 m, the shortest climb, within this of one place; a receiver's wandering and
   * reflections at a workshop's door stay within it (our choice).
   */
  private static final double STAYED_METRES = 50;

  /** What a climb was driven on. A closed set. */
  enum Ground {
    ROAD,
    ROLLERS,
    /** No receiver told a place, and the pressure does not decide: under 140 m of rise, mostly. */
    UNKNOWN
  }

  private RollerLoad() {}

  /** What a climb was driven on, by its places where there are any, else by the air pressure. */
  static Ground of(Climb climb, OptionalDouble pressureFallKilopascals) {
    return climb.spots().isEmpty()
        ? byPressure(climb.riseMetres(), pressureFallKilopascals)
        : byPlaces(climb.spots());
  }

  private static Ground byPlaces(List<Climb.Spot> spots) {
    Climb.Spot first = spots.getFirst();
    FlatGround ground = FlatGround.around(first.latitudeDegrees(), first.longitudeDegrees());
    FlatGround.Spot here = new FlatGround.Spot(0, 0);
    boolean hasStayed =
        spots.stream()
            .map(spot -> ground.spot(spot.latitudeDegrees(), spot.longitudeDegrees()))
            .allMatch(spot -> spot.distanceTo(here) < STAYED_METRES);
    return hasStayed && spots.getLast().metres() - first.metres() > 4 * STAYED_METRES
        ? Ground.ROLLERS
        : Ground.ROAD;
  }

  private static Ground byPressure(double riseMetres, OptionalDouble fallKilopascals) {
    if (fallKilopascals.isEmpty()) {
      return Ground.UNKNOWN;
    }
    double fall = fallKilopascals.getAsDouble();
    if (riseMetres * KILOPASCALS_PER_METRE - fall >= DOUBT_KILOPASCALS) {
      return Ground.ROLLERS;
    }
    return fall >= RISEN_KILOPASCALS ? Ground.ROAD : Ground.UNKNOWN;
  }
}
