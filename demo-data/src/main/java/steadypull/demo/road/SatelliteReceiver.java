package steadypull.demo.road;

import java.util.Optional;
import java.util.Random;

/**
 * A satellite receiver on board: once a second it says where it believes to be. Its error wanders,
 * jumps where walls reflect, and tunnels leave it without a fix. The same seed errs the same. One
 * thread at a time.
 */
public final class SatelliteReceiver {
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km
  private static final double DEGREE_STEPS = 1e7;
  private static final double METRE_STEPS = 10;
  private static final double SECONDS_PER_HOUR = 3600;

  private final ReceiverQuality quality;
  private final Random random;
  private final double keeps;
  private final double brings;
  private double north;
  private double east;
  private double up;
  private double reflectedNorth;
  private double reflectedEast;
  private double reflectedUp;
  private int reflectedSeconds;
  private int blindSeconds;

  /** A receiver that has found its satellites. */
  public SatelliteReceiver(ReceiverQuality quality, long seed) {
    this.quality = quality;
    random = new Random(seed ^ 0x5a7e111e);
    keeps = Math.exp(-1 / quality.wanderSeconds());
    brings = Math.sqrt(1 - keeps * keeps);
    north = random.nextGaussian() * quality.acrossMetres();
    east = random.nextGaussian() * quality.acrossMetres();
    up = random.nextGaussian() * quality.heightMetres();
  }

  /**
   * Says where it believes to be in the next second.
   *
   * @param place where it is
   * @param isInTunnel whether no satellite is seen
   */
  public Optional<Fix> next(Road.Place place, boolean isInTunnel) {
    return next(isInTunnel ? Optional.empty() : Optional.of(place));
  }

  /**
   * Says where it believes to be in the next second.
   *
   * @param place where it is; empty where no satellite is seen
   */
  public Optional<Fix> next(Optional<Road.Place> place) {
    wander();
    reflect();
    return isBlind() ? Optional.empty() : place.map(this::fix);
  }

  private void wander() {
    north = keeps * north + brings * quality.acrossMetres() * random.nextGaussian();
    east = keeps * east + brings * quality.acrossMetres() * random.nextGaussian();
    up = keeps * up + brings * quality.heightMetres() * random.nextGaussian();
  }

  private void reflect() {
    if (reflectedSeconds > 0) {
      reflectedSeconds--;
    } else if (random.nextDouble() * SECONDS_PER_HOUR < quality.reflectionsPerHour()) {
      reflectedSeconds = 5 + random.nextInt(21);
      double aside = 10 + 20 * random.nextDouble();
      double direction = 2 * Math.PI * random.nextDouble();
      reflectedNorth = aside * Math.sin(direction);
      reflectedEast = aside * Math.cos(direction);
      reflectedUp = aside * random.nextGaussian();
    }
  }

  private boolean isBlind() {
    if (blindSeconds > 0) {
      blindSeconds--;
      return true;
    }
    if (random.nextDouble() * SECONDS_PER_HOUR < quality.outagesPerHour()) {
      blindSeconds = 4 + random.nextInt(36);
      return true;
    }
    return random.nextDouble() * SECONDS_PER_HOUR < quality.missesPerHour();
  }

  private Fix fix(Road.Place place) {
    boolean isReflected = reflectedSeconds > 0;
    double narrowing = Math.cos(Math.toRadians(place.latitude()));
    double metresNorth = north + white() + (isReflected ? reflectedNorth : 0);
    double metresEast = east + white() + (isReflected ? reflectedEast : 0);
    double metresUp = up + 1.5 * white() + (isReflected ? reflectedUp : 0);
    return new Fix(
        step(place.latitude() + metresNorth / METRES_PER_DEGREE, DEGREE_STEPS),
        step(place.longitude() + metresEast / (METRES_PER_DEGREE * narrowing), DEGREE_STEPS),
        step(place.altitude() + metresUp, METRE_STEPS));
  }

  private double white() {
    return random.nextGaussian() * quality.whiteMetres();
  }

  private static double step(double value, double stepsPerUnit) {
    return Math.round(value * stepsPerUnit) / stepsPerUnit;
  }
}
