package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The same road again, as receivers on board saw it. */
class RepeatedClimbsTest {
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km

  /** A place on a plane, m. */
  private record Point(double north, double east, double up) {}

  /**
   * The receiver's error wanders by 1.5 m in each direction and 2.5 m in height (standard
   * deviations); two of them are apart by 2.1 m across the road and 3.5 m in height, nine of ten by
   * less than 3.5 and 5.8 m. A few errors a minute long make a trip's share uncertain: 1.5 times.
   */
  @Test
  void climbsOfDifferentVehiclesBothWaysAgreeWithinReceiverNoise() {
    List<Point> reference = path(TripLog.ofTrips("2026-03-24", "van", "ladder").getFirst());
    List<TripLog> others =
        Stream.of("2026-05-21", "2026-07-04", "2026-07-20")
            .map(day -> TripLog.ofTrips(day, "ladder").getFirst())
            .toList();
    for (TripLog other : others) {
      List<Double> across = new ArrayList<>();
      List<Double> height = new ArrayList<>();
      for (Point point : path(other)) {
        compare(point, reference, across, height);
      }
      assertThat(ninetieth(across)).as("m, %s", other.trip).isLessThan(1.5 * 3.5);
      assertThat(ninetieth(height)).as("m, %s", other.trip).isLessThan(1.5 * 5.8);
    }
  }

  @Test
  void roadsLeadElsewhere() {
    List<Point> ladder = path(TripLog.ofTrips("2026-03-24", "van", "ladder").getFirst());
    List<Point> shelf = path(TripLog.ofTrips("2026-05-02", "shelf").getFirst());
    Point top = Collections.max(shelf, (a, b) -> Double.compare(a.up(), b.up()));

    assertThat(ladder.stream().mapToDouble(point -> distance(point, top)).min().orElseThrow())
        .isGreaterThan(5000);
  }

  /** Distance between positions is what the speed adds up to. */
  @Test
  void positionsMoveAsFastAsTheWheels() {
    TripLog log = TripLog.ofTrips("2026-05-02", "shelf").getFirst();
    List<Point> path = path(log);
    double moved = 0;
    for (int i = 10; i < path.size(); i += 10) {
      moved += distance(path.get(i), path.get(i - 10));
    }
    TripLog.Series speed = log.channel("vehicle_speed[km/h]");
    double rolled = 0;
    for (int i = 1; i < speed.size(); i++) {
      rolled += (speed.value(i) + 0.5) / 3.6 * (speed.time(i) - speed.time(i - 1)) / 1e6;
    }
    assertThat(moved).isCloseTo(rolled, within(0.03 * rolled));
  }

  private static void compare(
      Point point, List<Point> reference, List<Double> across, List<Double> height) {
    int nearest = 0;
    for (int i = 1; i < reference.size(); i++) {
      nearest =
          distance(point, reference.get(i)) < distance(point, reference.get(nearest)) ? i : nearest;
    }
    Point at = reference.get(nearest);
    Point before = reference.get(Math.max(0, nearest - 2));
    Point after = reference.get(Math.min(reference.size() - 1, nearest + 2));
    double along = distance(before, after);
    if (distance(point, at) < 15 && along > 30) { // beside a moving vehicle, not in the tunnel
      double area =
          (after.east() - before.east()) * (point.north() - at.north())
              - (after.north() - before.north()) * (point.east() - at.east());
      across.add(Math.abs(area) / along);
      height.add(Math.abs(point.up() - at.up()));
    }
  }

  private static double ninetieth(List<Double> values) {
    assertThat(values).hasSizeGreaterThan(400);
    return values.stream().sorted().skip(values.size() * 9L / 10).findFirst().orElseThrow();
  }

  private static List<Point> path(TripLog log) {
    TripLog.Series latitude = log.channel("latitude[deg]");
    List<Point> path = new ArrayList<>();
    for (int i = 0; i < latitude.size(); i++) {
      double north = (latitude.value(i) - 33.5) * METRES_PER_DEGREE;
      double east =
          (log.channel("longitude[deg]").value(i) + 48)
              * METRES_PER_DEGREE
              * Math.cos(Math.toRadians(33.5));
      path.add(new Point(north, east, log.channel("altitude[m]").value(i)));
    }
    return path;
  }

  private static double distance(Point one, Point other) {
    return Math.hypot(one.north() - other.north(), one.east() - other.east());
  }
}
