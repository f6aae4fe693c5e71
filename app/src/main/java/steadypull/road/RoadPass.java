package steadypull.road;

import java.util.List;

/**
 * One unbroken drive along a road, point after point. Immutable.
 *
 * @param points in the order of travel, metres never falling, one or more; some 20 m apart or a
 *     second, whichever is farther
 */
public record RoadPass(List<PassPoint> points) {
  public RoadPass {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("A pass has a point or more");
    }
  }

  /** From the first point to the last, metres driven. */
  public double lengthMetres() {
    return points.getLast().metres() - points.getFirst().metres();
  }

  /** The same road as it is for somebody who drives it the other way, from 0 s and 0 m on. */
  public RoadPass backwards() {
    PassPoint end = points.getLast();
    return new RoadPass(
        points.reversed().stream()
            .map(
                point ->
                    new PassPoint(
                        end.seconds() - point.seconds(),
                        end.metres() - point.metres(),
                        point.place(),
                        point.heightMetres(),
                        -point.grade(),
                        point.gradeError()))
            .toList());
  }
}
