package steadypull.thermal;

import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;

/**
 * How a rig would be driven along a known road: at the speed that the driver likes as long as the
 * engine can hold it, at what the engine gives where it cannot. Immutable but for what the drive
 * has shown, which it reads.
 *
 * @param maps fuel and air that go with a power
 * @param load the rig's figures
 * @param gears gears that were seen
 * @param pull the most that the engine gives
 */
record RoadPlan(LoadMaps maps, RoadLoad load, GearsSeen gears, PullGuess pull) {
  /** A gearbox keeps a gear up to 0.82 to 0.97 of the most torque (common practice). */
  private static final double SPARE = 0.9;

  private static final double SPARE_SPREAD = 0.04;

  /** Hardest that a loaded rig is sped up and slowed down without need, m/s2 (common practice). */
  private static final double HARDEST_PULL = 0.35;

  private static final double HARDEST_EASING = 0.4;
  private static final double SLOWEST_METRES_PER_SECOND = 4;

  /** Air of the standard atmosphere, K/m (ISO 2533:1975). */
  private static final double LAPSE = 0.0065;

  /** Share of its pressure that air loses per metre: g / (R T) at 288.15 K (ISO 2533:1975), 1/m. */
  private static final double THINNING = 1.186e-4;

  /** What a descent leaves the engine: alternator, pumps (common practice, no source). */
  private static final double LEAST_KILOWATTS = 0;

  /**
   * One draw of everything that the plan cannot know.
   *
   * @param slope the way that is taken
   * @param force of the rig
   * @param beside standard normal number for the errors of known grades
   * @param unknown the same for the road beyond
   * @param wish the same for the driver's speed and the gearbox
   * @param power the same for the most that the engine gives
   */
  record Draw(
      Slope slope,
      RoadForce.Draw force,
      double beside,
      double unknown,
      double wish,
      double power) {}

  /** Drivers keep their speed within so much (estimated). */
  private static final double WISH_SPREAD = 0.025;

  /**
   * The load during every step.
   *
   * @param now the present load
   * @param cruise speed that the driver likes, m/s
   * @param secondsAhead the moments between which the steps lie, the first now
   * @return by the moment at which a step ends; the first is the present load
   */
  Load[] loads(Load now, double cruise, Draw draw, double[] secondsAhead) {
    Load[] loads = new Load[secondsAhead.length];
    loads[0] = now;
    double speed = Math.max(SLOWEST_METRES_PER_SECOND, now.metresPerSecond());
    double wish = cruise * (1 + WISH_SPREAD * draw.wish());
    double most = pull.newtonMetres() * Math.max(0.5, 1 + pull.spread() * draw.power());
    double spare = SPARE + SPARE_SPREAD * draw.wish();
    double metres = 0;
    double height = 0;
    for (int point = 1; point < loads.length; point++) {
      double span = secondsAhead[point] - secondsAhead[point - 1];
      double driven = speed * span;
      double up = draw.slope().metresUp(metres + driven, draw.beside(), draw.unknown()) - height;
      double newtons =
          draw.force().newtons(load, speed, up / driven, secondsAhead[point] - span / 2);
      double gain = Math.clamp((wish - speed) / span, -HARDEST_EASING, HARDEST_PULL);
      double wished = kilowatts(newtons + load.inertialKilograms() * gain, speed + gain * span / 2);
      double rpm = gears.rpm(wished, speed, most, spare, now.engineRpm());
      double given = Math.clamp(wished, LEAST_KILOWATTS, FullPull.kilowatts(most, rpm));
      double after = wished > given ? slowed(speed, newtons, given, span) : speed + gain * span;
      double middle = (speed + after) / 2;
      loads[point] = load(now, given, rpm * middle / speed, middle, height + up / 2);
      metres += middle * span;
      height = draw.slope().metresUp(metres, draw.beside(), draw.unknown());
      speed = Math.max(SLOWEST_METRES_PER_SECOND, after);
    }
    return loads;
  }

  private static double kilowatts(double newtons, double metresPerSecond) {
    return newtons * metresPerSecond / 1000 / DerivedChannels.DRIVELINE_EFFICIENCY;
  }

  /** Speed after a stretch on which the engine gives less than the road asks for. */
  private double slowed(double speed, double newtons, double given, double span) {
    double watts = given * 1000 * DerivedChannels.DRIVELINE_EFFICIENCY;
    double square = speed * speed + 2 * span * (watts - newtons * speed) / load.inertialKilograms();
    double holds = watts / Math.max(1, newtons);
    double after = Math.sqrt(Math.max(0, square));
    return newtons > 0 && holds < speed ? Math.max(after, holds) : after;
  }

  private Load load(
      Load now, double kilowatts, double rpm, double metresPerSecond, double metresUp) {
    return maps.moved(
        now,
        kilowatts,
        rpm,
        metresPerSecond,
        now.outsideCelsius() - LAPSE * metresUp,
        now.outsideKilopascals() * Math.exp(-THINNING * metresUp));
  }
}
