package steadypull.thermal;

import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;

/** One draw's drive along the road, planned step by step. Used by one thread. */
final class PlannedDrive {
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

  /** Drivers keep their speed within so much (estimated). */
  private static final double WISH_SPREAD = 0.025;

  private final LoadMaps maps;
  private final RoadLoad load;
  private final GearsSeen gears;
  private final Load now;
  private final RoadPlan.Draw draw;
  private final double wish;
  private final double mostNewtonMetres;
  private final double spare;
  private double speed;
  private double metres;
  private double height;

  /**
   * Begins at the present load.
   *
   * @param cruise speed that the driver likes, m/s
   */
  PlannedDrive(RoadPlan plan, Load now, double cruise, RoadPlan.Draw draw) {
    this.maps = plan.maps();
    this.load = plan.load();
    this.gears = plan.gears();
    this.now = now;
    this.draw = draw;
    wish = cruise * (1 + WISH_SPREAD * draw.wish());
    PullGuess pull = plan.pull();
    mostNewtonMetres = pull.newtonMetres() * Math.max(0.5, 1 + pull.spread() * draw.power());
    spare = SPARE + SPARE_SPREAD * draw.wish();
    speed = Math.max(SLOWEST_METRES_PER_SECOND, now.metresPerSecond());
  }

  /**
   * The load during the next step.
   *
   * @param span seconds that the step takes
   * @param kept share of the present force beside the rig's figures that is left in its middle, as
   *     {@link RoadForce#kept}
   */
  Load next(double span, double kept) {
    double driven = speed * span;
    double up = metresUp(metres + driven) - height;
    double newtons = draw.force().newtons(load, speed, up / driven) + draw.force().beside(kept);
    double gain = Math.clamp((wish - speed) / span, -HARDEST_EASING, HARDEST_PULL);
    double wished = kilowatts(newtons + load.inertialKilograms() * gain, speed + gain * span / 2);
    double rpm = gears.rpm(wished, speed, mostNewtonMetres, spare, now.engineRpm());
    double given = Math.clamp(wished, LEAST_KILOWATTS, FullPull.kilowatts(mostNewtonMetres, rpm));
    double after = wished > given ? slowed(newtons, given, span) : speed + gain * span;
    double middle = (speed + after) / 2;
    Load step = load(given, rpm * middle / speed, middle, height + up / 2);
    metres += middle * span;
    height = metresUp(metres);
    speed = Math.max(SLOWEST_METRES_PER_SECOND, after);
    return step;
  }

  private double metresUp(double ahead) {
    return draw.slope().metresUp(ahead, draw.beside(), draw.unknown());
  }

  private static double kilowatts(double newtons, double metresPerSecond) {
    return newtons * metresPerSecond / 1000 / DerivedChannels.DRIVELINE_EFFICIENCY;
  }

  /** Speed after a stretch on which the engine gives less than the road asks for. */
  private double slowed(double newtons, double given, double span) {
    double watts = given * 1000 * DerivedChannels.DRIVELINE_EFFICIENCY;
    double square = speed * speed + 2 * span * (watts - newtons * speed) / load.inertialKilograms();
    double holds = watts / Math.max(1, newtons);
    double after = Math.sqrt(Math.max(0, square));
    return newtons > 0 && holds < speed ? Math.max(after, holds) : after;
  }

  private Load load(double kilowatts, double rpm, double metresPerSecond, double metresUp) {
    return maps.moved(
        now,
        kilowatts,
        rpm,
        metresPerSecond,
        now.outsideCelsius() - LAPSE * metresUp,
        now.outsideKilopascals() * Math.exp(-THINNING * metresUp));
  }
}
