package steadypull.road;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Course;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Fix;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Road;
import steadypull.demo.road.SatelliteReceiver;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Tour;
import steadypull.demo.road.Weather;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/**
 * A tour through the invented country, driven by the plant with a receiver on board: what the
 * vehicle told, and the truth beside it. Mass, weather and speed come from the seed.
 *
 * @param vehicle as its owner describes it; the mass entered is some per cent beside the truth
 * @param trueMassKilograms of vehicle and trailer
 * @param samples in the order of time
 * @param truth second by second, from second 1 on
 */
public record TourDrive(
    Vehicle vehicle, double trueMassKilograms, List<Sample> samples, List<Truth> truth) {
  private static final long SECOND_MICROS = 1_000_000;

  /** Sensors are polled in the second before, each at its own moment. */
  private static final long POLLED_MICROS_BEFORE = 400_000;

  private static final long TURN_MICROS = 15_000;
  private static final long RECEIVER_MICROS_BEFORE = 50_000;

  /** The way ends before the driver would run off the country's edge. */
  private static final double END_METRES = 300;

  /**
   * The truth of a second.
   *
   * @param place where the vehicle was
   * @param metresPerSecond its speed
   */
  public record Truth(double seconds, Road.Place place, double metresPerSecond) {}

  /** What a drive's owner and its vehicle tell wrong, and the wind. A closed set. */
  public enum Errors {
    /** All is as it was told, and no wind blows. */
    NONE(0, 0, 0),
    /** Mass 5 % wrong and wind of 3 m/s, as chance has it; torque as it is. */
    USUAL(0.05, 3, 0),
    /** Mass 20 % wrong, wind of 6 m/s and torque 4 % wrong, each to one side or the other. */
    HARD(0.2, 6, 0.04);

    private final double mass;
    private final double wind;
    private final double torque;

    Errors(double mass, double wind, double torque) {
      this.mass = mass;
      this.wind = wind;
      this.torque = torque;
    }

    private double massShare(double chance) {
      return this == HARD ? Math.copySign(mass, chance) : mass * Math.clamp(chance, -2, 2);
    }

    private double windMetresPerSecond(double chance) {
      return this == HARD ? Math.copySign(wind, chance) : wind * chance;
    }

    private double torqueShare(double chance) {
      return Math.copySign(torque, chance);
    }
  }

  /** Drives a tour with a usual receiver. */
  public static TourDrive of(Tour tour, long seed) {
    return of(tour, seed, ReceiverQuality.usual(), Set.of());
  }

  /**
   * Drives a tour in a usual world.
   *
   * @param silent sensors that this vehicle does not have
   */
  public static TourDrive of(Tour tour, long seed, ReceiverQuality quality, Set<Sensor> silent) {
    return of(tour, seed, quality, silent, Errors.USUAL);
  }

  /** Drives a tour in a world of such errors. */
  public static TourDrive of(
      Tour tour, long seed, ReceiverQuality quality, Set<Sensor> silent, Errors errors) {
    Random random = new Random(seed * 31 + tour.name().hashCode());
    double mass = 5000 + random.nextDouble() * 7000;
    double entered = mass * (1 + errors.massShare(random.nextGaussian()));
    double celsius = 5 + 25 * random.nextDouble();
    Weather weather = new Weather(celsius, errors.windMetresPerSecond(random.nextGaussian()), 1);
    double speed = (70 + random.nextInt(20)) / 3.6;
    double torqueShare = 1 + errors.torqueShare(random.nextGaussian());
    Drive drive = DemoWorld.drive(scenario(tour, mass, weather, speed), seed);
    TourDrive told =
        driven(
            tour, drive, vehicle(entered), mass, new SatelliteReceiver(quality, seed + 7), silent);
    return new TourDrive(told.vehicle(), mass, scaled(told.samples(), torqueShare), told.truth());
  }

  private static List<Sample> scaled(List<Sample> samples, double torqueShare) {
    return samples.stream()
        .map(
            sample ->
                sample.channel().equals(Channels.REFERENCE_TORQUE)
                    ? new Sample(
                        sample.channel(),
                        sample.timeMicros(),
                        Math.rint(sample.value() * torqueShare))
                    : sample)
        .toList();
  }

  private static TourDrive driven(
      Tour tour,
      Drive drive,
      Vehicle vehicle,
      double mass,
      SatelliteReceiver receiver,
      Set<Sensor> silent) {
    List<Sample> samples = new ArrayList<>();
    List<Truth> truth = new ArrayList<>();
    for (long second = 1; ; second++) {
      drive.advanceTo((double) second);
      Road.Place place = drive.place().orElseThrow();
      if (drive.isOver() || place.metres() > tour.length() - END_METRES) {
        samples.sort(Comparator.comparingLong(Sample::timeMicros));
        return new TourDrive(vehicle, mass, List.copyOf(samples), List.copyOf(truth));
      }
      long micros = second * SECOND_MICROS;
      poll(drive, micros, silent, samples);
      receiver
          .next(place, drive.isUnderRoof())
          .ifPresent(fix -> tell(fix, micros - RECEIVER_MICROS_BEFORE, samples));
      truth.add(new Truth(second, place, drive.state().motion().speed()));
    }
  }

  private static void poll(Drive drive, long micros, Set<Sensor> silent, List<Sample> samples) {
    long turn = micros - POLLED_MICROS_BEFORE;
    for (Sensor sensor : Sensor.values()) {
      Optional<Channel> channel = Channels.find(sensor.channel());
      if (channel.isPresent() && !silent.contains(sensor)) {
        samples.add(new Sample(channel.get(), turn, drive.read(sensor)));
      }
      turn += TURN_MICROS;
    }
  }

  private static void tell(Fix fix, long micros, List<Sample> samples) {
    samples.add(new Sample(Channels.LATITUDE, micros, fix.latitudeDegrees()));
    samples.add(new Sample(Channels.LONGITUDE, micros, fix.longitudeDegrees()));
    samples.add(new Sample(Channels.ALTITUDE, micros, fix.altitudeMetres()));
  }

  private static Scenario scenario(Tour tour, double mass, Weather weather, double speed) {
    Scenario usual = DemoWorld.scenario("cool-day").orElseThrow();
    return new Scenario(
        "tour",
        tour.name(),
        Duration.ofSeconds((long) (tour.length() / 5)),
        usual.vehicleName(),
        usual.vehicleFile(),
        Rig.usual().with(RigTrait.MASS_KG, mass),
        new Course.OnRoad(tour, weather, tour.speeds(speed), new WarmStart(40, 85, 88, 70, 18)));
  }

  private static Vehicle vehicle(double massKilograms) {
    String file = DemoWorld.vehicleFile(DemoWorld.scenario("cool-day").orElseThrow());
    try {
      Vehicle usual = VehicleJson.read(file, "the demo's vehicle file");
      steadypull.vehicle.Rig rig = usual.rig();
      return usual.withRig(
          new steadypull.vehicle.Rig(
              OptionalDouble.of(massKilograms),
              rig.dragAreaSquareMetres(),
              rig.rollingResistance(),
              rig.tyreRadiusMetres()));
    } catch (VehicleFileException broken) {
      throw new IllegalStateException(broken);
    }
  }
}
