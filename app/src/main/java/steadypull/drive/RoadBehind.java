package steadypull.drive;

import java.util.ArrayDeque;
import java.util.OptionalDouble;

/**
 * Height of the road over the last three minutes, from grade and speed. Pipeline thread only. A
 * second without a known grade counts as level.
 */
final class RoadBehind {
  private static final long KEPT_MICROS = 185_000_000;

  private record Point(long timeMicros, double heightMetres) {}

  private final ArrayDeque<Point> points = new ArrayDeque<>();
  private double heightMetres;

  /** Adds one second of driving. */
  void second(long timeMicros, OptionalDouble speedKilometresPerHour, OptionalDouble gradePercent) {
    heightMetres += speedKilometresPerHour.orElse(0) / 3.6 * gradePercent.orElse(0) / 100;
    points.addLast(new Point(timeMicros, heightMetres));
    while (points.getFirst().timeMicros() < timeMicros - KEPT_MICROS) {
      points.removeFirst();
    }
  }

  /** Heights relative to here, metres, oldest first. */
  Trace relativeToHere() {
    return new Trace(
        points.stream().mapToLong(Point::timeMicros).toArray(),
        points.stream().mapToDouble(point -> point.heightMetres() - heightMetres).toArray());
  }
}
