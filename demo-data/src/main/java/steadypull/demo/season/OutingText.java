package steadypull.demo.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Weather;

/**
 * Reads the calendar's outings: {@code hold} or {@code pulls} on the dynamometer; on the road words
 * such as {@code ladder>} (out to the end), {@code ladder<} (back), {@code idle6} (stand for six
 * minutes with the engine running).
 */
final class OutingText {
  private static final double[] TRAFFIC_LIGHTS = {640, 1310}; // m from the town's middle
  private static final double RED_SHARE = 0.55; // of the times that one comes to a light

  private final CalendarRow row;
  private final Random random;

  OutingText(CalendarRow row, Random random) {
    this.row = row;
    this.random = random;
  }

  Outing parse() {
    return switch (row.outing()) {
      case "hold" -> new Outing.OnRollers(hold(), row.celsius());
      case "pulls" -> new Outing.OnRollers(pulls(), row.celsius());
      default ->
          new Outing.OnTheRoad(
              legs(), new Weather(row.celsius(), row.headwindMetresPerSecond(), 1));
    };
  }

  private List<Leg> legs() {
    List<Leg> legs = new ArrayList<>();
    legs.add(new Leg.Stand(between(25, 80), ""));
    for (String word : row.outing().split(" ", -1)) {
      if (word.startsWith("idle")) {
        double minutes = Double.parseDouble(word.substring("idle".length()));
        legs.add(new Leg.Stand(minutes * 60, "heat soak at idle"));
      } else {
        SeasonRoad road = SeasonRoad.named(word.substring(0, word.length() - 1));
        drive(legs, road, word.endsWith(">"));
      }
    }
    return legs;
  }

  private void drive(List<Leg> legs, SeasonRoad road, boolean leavesTown) {
    double cruise = (row.kilometresPerHour() + between(-1.5, 1.5)) / 3.6;
    double at = leavesTown ? 0 : road.length();
    for (double light : leavesTown ? TRAFFIC_LIGHTS : new double[] {1310, 640}) {
      if (random.nextDouble() < RED_SHARE) {
        legs.add(new Leg.Stretch(road, at, light, cruise));
        legs.add(new Leg.Stand(between(12, 50), ""));
        at = light;
      }
    }
    legs.add(new Leg.Stretch(road, at, leavesTown ? road.length() : 0, cruise));
    String mark = leavesTown ? "end of " + road.road().name() : "";
    legs.add(new Leg.Stand(between(20, 60), mark));
  }

  private double between(double least, double greatest) {
    return least + random.nextDouble() * (greatest - least);
  }

  /** A long run at middling load, until the charge circuit has settled. */
  private List<Outing.Stage> hold() {
    List<Outing.Stage> stages = warmUp();
    stages.add(rollers(1620, 0.78, "hold begins"));
    stages.add(rollers(120, 0.1, "hold ends"));
    stages.add(standing(60));
    return stages;
  }

  /** Three runs near full load with a rest between. */
  private List<Outing.Stage> pulls() {
    List<Outing.Stage> stages = warmUp();
    for (int pull = 1; pull <= 3; pull++) {
      stages.add(rollers(100, 0.9, "pull " + pull));
      stages.add(rollers(260, 0.1, ""));
    }
    stages.add(standing(60));
    return stages;
  }

  private List<Outing.Stage> warmUp() {
    List<Outing.Stage> stages = new ArrayList<>();
    stages.add(standing(between(40, 80)));
    for (int gear = 1; gear <= 3; gear++) {
      for (int part = 1; part <= 3; part++) {
        double speed = Rollers.SPEED * (3 * gear + part - 3) / 10;
        stages.add(new Outing.Stage(2, torque(gear, speed, 0.15), ""));
      }
    }
    stages.add(rollers(420, 0.25, "warm-up"));
    return stages;
  }

  private Outing.Stage rollers(double seconds, double share, String mark) {
    return new Outing.Stage(seconds, torque(Rollers.GEAR, Rollers.SPEED, share), mark);
  }

  private Duty torque(int gear, double speed, double share) {
    double peak = row.vehicle().rig().of(RigTrait.PEAK_TORQUE_NM);
    return new Duty.HoldTorque(gear, speed, share * peak, Rollers.COOLING);
  }

  private static Outing.Stage standing(double seconds) {
    return new Outing.Stage(seconds, new Duty.HoldSpeed(0), "");
  }

  /** The workshop's dynamometer. */
  private static final class Rollers {
    private static final int GEAR = 4;
    private static final double SPEED = 22; // m/s
    private static final double COOLING = 10; // m/s of the fan's air
  }
}
