package steadypull.backtest;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Course;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Weather;
import steadypull.thermal.Fan;
import steadypull.thermal.HeatLessons;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/**
 * Drives of one vehicle, one after the other: what each teaches, and how the first minutes of a
 * later one are foretold with that and without. The road ahead is known, so that what errs is the
 * heat and not the load.
 */
final class LearntSeason {
  private static final Instant FIRST = Instant.parse("2026-05-01T08:00:00Z");
  private static final Duration BETWEEN = Duration.ofDays(5);

  /** Forecasts made from here on, when there are any, and in the first ten minutes. */
  private static final int FROM_SECOND = 60;

  private static final int TO_SECOND = 600;
  private static final int AHEAD_SECONDS = 120;

  private final TowingWorld world;
  private final List<LessonOfTrip> lessons = new ArrayList<>();

  LearntSeason(TowingWorld world) {
    this.world = world;
  }

  /** What was foretold of a channel two minutes ahead against what came. */
  static final class Score {
    private int forecasts;
    private int held;
    private double squares;
    private double width;

    private void add(Fan fan, double truth) {
      double low = fan.at(Fan.LEVELS.indexOf(0.10), AHEAD_SECONDS);
      double high = fan.at(Fan.LEVELS.indexOf(0.90), AHEAD_SECONDS);
      double missed = truth - fan.at(Fan.MEDIAN, AHEAD_SECONDS);
      forecasts++;
      held += truth >= low && truth <= high ? 1 : 0;
      squares += missed * missed;
      width += high - low;
    }

    double rootMeanSquare() {
      return Math.sqrt(squares / forecasts);
    }

    /** Share of the truth in the 80 % band. */
    double heldShare() {
      return (double) held / forecasts;
    }

    double meanWidth() {
      return width / forecasts;
    }
  }

  /** Drives a trip from end to end for what it teaches, by the models alone. */
  void drive(int trip) {
    TowingWorld drive = world.again(trip);
    lessons.add(new LessonOfTrip(start(trip), heat(drive, trip)));
  }

  /**
   * The same with dirt on the radiators, for the given time, and with so much of the world's wind.
   *
   * @param windShare of the head- or tailwind that a world draws for a whole drive, 4 m/s (standard
   *     deviation); a trip that turns or comes back meets less
   * @param closed share of the radiators' open face that dirt has closed, 0 to 1
   */
  void drive(int trip, double windShare, double closed, Duration length) {
    TowingWorld drive = world.again(trip);
    double clean = drive.scenario().rig().of(RigTrait.CLOGGED_SHARE);
    Scenario scenario = drive.scenario();
    Scenario dirty =
        new Scenario(
            scenario.name(),
            scenario.sentence(),
            length,
            scenario.vehicleName(),
            scenario.vehicleFile(),
            scenario.rig().with(RigTrait.CLOGGED_SHARE, 1 - (1 - clean) * (1 - closed)),
            inWind((Course.OnRoad) scenario.course(), windShare));
    TowingWorld shorter = new TowingWorld(drive.number(), dirty, drive.vehicle(), drive.missing());
    lessons.add(new LessonOfTrip(start(trip), heat(shorter, trip)));
  }

  private static Course inWind(Course.OnRoad course, double share) {
    Weather weather = course.weather();
    return new Course.OnRoad(
        course.road(),
        new Weather(
            weather.celsiusAtStart(),
            share * weather.headwindMetresPerSecond(),
            weather.gustMetresPerSecond()),
        course.wishes(),
        course.start());
  }

  /** What the drives up to now have taught. */
  List<LessonOfTrip> lessons() {
    return List.copyOf(lessons);
  }

  private static Instant start(int trip) {
    return FIRST.plus(BETWEEN.multipliedBy(trip));
  }

  /** What a drive teaches. */
  static TripHeat heat(TowingWorld world, long seed) {
    Drive drive = DemoWorld.drive(world.scenario(), seed);
    boolean isWater = world.vehicle().layout() == CoolingLayout.WATER_TO_AIR;
    HeatLessons lessons = new HeatLessons(world.vehicle());
    Sensor[] sensors = Sensor.values();
    for (int second = 1; !drive.isOver(); second++) {
      for (int i = 0; i < sensors.length; i++) {
        double at = second - 0.5 + 0.5 * i / sensors.length;
        drive.advanceTo(at);
        double value = drive.read(sensors[i]);
        Channels.find(sensors[i].channel())
            .filter(channel -> isWater || !channel.equals(Channels.CHARGE_COOLANT_TEMP))
            .ifPresent(channel -> lessons.accept(new Sample(channel, Math.round(at * 1e6), value)));
      }
      drive.advanceTo(second);
    }
    return lessons.finish();
  }

  /**
   * The first minutes of a trip that sets out with what the drives up to now have taught, or with
   * the layout's belief alone.
   */
  void foretell(int trip, boolean isLearnt, Map<Channel, Score> scores) {
    TowingWorld drive = world.again(trip);
    Vehicle vehicle =
        isLearnt
            ? drive
                .vehicle()
                .withConfigurations(Configuration.settingOut(List.of(), lessons, start(trip)))
            : drive.vehicle();
    WorldDrive driven =
        WorldDrive.of(
            new TowingWorld(drive.number(), beginning(drive.scenario()), vehicle, drive.missing()),
            WorldDrive.Road.KNOWN);
    driven
        .fans()
        .forEach(
            (channel, fans) ->
                score(
                    driven.celsius().getOrDefault(channel, new double[0]),
                    fans,
                    scores.computeIfAbsent(channel, _ -> new Score())));
  }

  private static void score(double[] celsius, Fan[] fans, Score score) {
    for (int second = FROM_SECOND; second <= TO_SECOND; second++) {
      if (fans[second] != null) {
        score.add(fans[second], celsius[second + AHEAD_SECONDS]);
      }
    }
  }

  private static Scenario beginning(Scenario whole) {
    return new Scenario(
        whole.name(),
        whole.sentence(),
        Duration.ofSeconds(TO_SECOND + AHEAD_SECONDS + 2),
        whole.vehicleName(),
        whole.vehicleFile(),
        whole.rig(),
        whole.course());
  }

  /** Scores by channel, in the order of their ids. */
  static Map<Channel, Score> scores() {
    return new TreeMap<>(Comparator.comparing(Channel::id));
  }
}
