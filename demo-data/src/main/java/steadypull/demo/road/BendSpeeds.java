package steadypull.demo.road;

import java.util.ArrayList;
import java.util.List;

/**
 * How fast a driver with a trailer goes along a track: as fast as wished, slower in bends, braking
 * in time. Stateless.
 */
final class BendSpeeds {
  /** Across, m/s2 (common practice: 2 with a trailer, no source). */
  private static final double ACROSS = 2;

  /** Braking ahead of a bend, m/s2 (estimated). */
  private static final double BRAKING = 0.8;

  private static final double STEP_METRES = 20;
  private static final double SLOWEST = 5;
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km

  private BendSpeeds() {}

  /** The wishes along a track, m/s by metres. */
  static List<Course.Wish> along(Track track, double metresPerSecond) {
    int steps = Math.max(1, (int) (track.length() / STEP_METRES));
    double[] speeds = new double[steps];
    for (int step = 0; step < steps; step++) {
      speeds[step] = Math.min(metresPerSecond, inBend(track, step * STEP_METRES));
    }
    for (int step = steps - 2; step >= 0; step--) {
      double next = speeds[step + 1];
      speeds[step] = Math.min(speeds[step], Math.sqrt(next * next + 2 * BRAKING * STEP_METRES));
    }
    List<Course.Wish> wishes = new ArrayList<>();
    for (int step = 0; step < steps; step++) {
      wishes.add(new Course.Wish(step * STEP_METRES, speeds[step]));
    }
    return wishes;
  }

  private static double inBend(Track track, double metres) {
    double turned =
        Math.IEEEremainder(
            heading(track, metres) - heading(track, metres - STEP_METRES), 2 * Math.PI);
    double radius = STEP_METRES / Math.max(1e-6, Math.abs(turned));
    return Math.max(SLOWEST, Math.sqrt(ACROSS * radius));
  }

  private static double heading(Track track, double metres) {
    Road.Place here = track.at(Math.max(0, metres));
    Road.Place ahead = track.at(Math.max(0, metres) + STEP_METRES);
    double narrowing = Math.cos(Math.toRadians(here.latitude()));
    return Math.atan2(
        (ahead.latitude() - here.latitude()) * METRES_PER_DEGREE,
        (ahead.longitude() - here.longitude()) * narrowing * METRES_PER_DEGREE);
  }
}
