package steadypull.demo.season;

import java.util.Random;

/**
 * A satellite receiver on board: reports once a second, a little late, a little beside. Its error
 * wanders (estimated: 1.5 m standard deviation across, 2.5 m in height, over a minute or two).
 */
final class Receiver {
  private static final long PERIOD_MICROS = 1_000_000;
  private static final long LATE_MICROS = 140_000; // common practice, no source
  private static final double LATE_JITTER_MICROS = 6_000;
  private static final double WANDER_METRES = 1.5;
  private static final double HEIGHT_WANDER_METRES = 2.5;
  private static final double WHITE_METRES = 0.15;
  private static final double WANDER_SECONDS = 90;
  private static final double KEEPS = Math.exp(-1 / WANDER_SECONDS);
  private static final double BRINGS = Math.sqrt(1 - KEEPS * KEEPS);
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km
  private static final double DEGREE_STEPS = 1e7;
  private static final double METRE_STEPS = 10;

  private final Random random;
  private long second;
  private long arrival;
  private double north;
  private double east;
  private double up;

  /**
   * A receiver that finds its satellites after a while.
   *
   * @param firstSecond of the trip in which it knows where it is
   */
  Receiver(Random random, int firstSecond) {
    this.random = random;
    second = firstSecond;
    north = random.nextGaussian() * WANDER_METRES;
    east = random.nextGaussian() * WANDER_METRES;
    up = random.nextGaussian() * HEIGHT_WANDER_METRES;
    proceed();
  }

  /** When the next report arrives, microseconds of the trip. */
  long arrival() {
    return arrival;
  }

  /** Says where it believes to be. */
  void report(SeasonRoad.Spot spot, SeasonSink sink) {
    double narrowing = Math.cos(Math.toRadians(spot.latitude()));
    double latitude = spot.latitude() + (north + white()) / METRES_PER_DEGREE;
    double longitude = spot.longitude() + (east + white()) / (METRES_PER_DEGREE * narrowing);
    sink.sample("latitude[deg]", arrival, step(latitude, DEGREE_STEPS));
    sink.sample("longitude[deg]", arrival, step(longitude, DEGREE_STEPS));
    sink.sample("altitude[m]", arrival, step(spot.altitude() + up + white(), METRE_STEPS));
  }

  private double white() {
    return random.nextGaussian() * WHITE_METRES;
  }

  private static double step(double value, double stepsPerUnit) {
    return Math.round(value * stepsPerUnit) / stepsPerUnit;
  }

  /** Goes on to the next second. */
  void proceed() {
    north = KEEPS * north + BRINGS * WANDER_METRES * random.nextGaussian();
    east = KEEPS * east + BRINGS * WANDER_METRES * random.nextGaussian();
    up = KEEPS * up + BRINGS * HEIGHT_WANDER_METRES * random.nextGaussian();
    long late = LATE_MICROS + (long) (Math.abs(random.nextGaussian()) * LATE_JITTER_MICROS);
    arrival = second * PERIOD_MICROS + late;
    second++;
  }
}
