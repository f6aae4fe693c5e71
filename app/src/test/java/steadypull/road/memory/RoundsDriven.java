package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;

/**
 * One kilometre straight on, then twice around a circle of 4 km, the first lap up, the second down,
 * as no road is: only a sight that knows the order can tell the laps apart.
 */
final class RoundsDriven {
  static final double LENGTH_METRES = 9000;

  /** Where up becomes down. */
  static final double CHANGE_METRES = 5000;

  private static final double BEGIN_METRES = 1000;
  private static final double LAP_METRES = 4000;
  private static final double RADIUS = LAP_METRES / (2 * Math.PI);
  private static final FlatGround GROUND = FlatGround.around(-41, -118);

  private RoundsDriven() {}

  static double grade(double metres) {
    return metres < CHANGE_METRES ? 0.03 : -0.02;
  }

  static RoadPass pass() {
    List<PassPoint> points = new ArrayList<>();
    for (double metres = 0; metres <= LENGTH_METRES; metres += 25) {
      points.add(
          new PassPoint(
              metres / 20,
              metres,
              Optional.of(new PassPoint.Place(latitude(metres), longitude(metres), 2.5)),
              0,
              grade(metres),
              0.004));
    }
    return new RoadPass(points);
  }

  static void live(RoadSight sight, DoubleConsumer afterEachSecond) {
    for (double metres = 0; metres <= LENGTH_METRES; metres += 20) {
      sight.moved(metres / 20, metres == 0 ? 0 : 20);
      sight.fixed(
          new PositionFix(
              metres / 20, latitude(metres), longitude(metres), OptionalDouble.empty()));
      afterEachSecond.accept(metres);
    }
  }

  private static double latitude(double metres) {
    double round = metres - BEGIN_METRES;
    return GROUND.latitude(round < 0 ? round : RADIUS * Math.sin(round / RADIUS));
  }

  private static double longitude(double metres) {
    double round = Math.max(0, metres - BEGIN_METRES);
    return GROUND.longitude(RADIUS * Math.cos(round / RADIUS));
  }
}
