package steadypull.road.load;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Country;
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
 * A rig of unknown mass on a tour through the invented country: what it is, what its owner entered,
 * and what its vehicle tells. Everything comes from the seed.
 *
 * @param vehicle as its owner describes it
 * @param torqueShare what the control unit's idea of torque is over the truth
 */
public record RigWorld(
    Vehicle vehicle, Rig truth, Tour tour, Weather weather, double torqueShare, long seed) {
  private static final long SECOND_MICROS = 1_000_000;
  private static final double END_METRES = 300;

  /** Sensors are polled in the second before, each in its turn. */
  private static final long TURN_MICROS = 15_000;

  /** A rig of 2.5 to 14 t whose owner is wrong by -30 to +50 % of its mass. */
  public static RigWorld of(long seed) {
    Random random = new Random(seed * 7919 + 17);
    double mass = 2500 * Math.pow(14.0 / 2.5, random.nextDouble());
    double dragArea = (2.2 + 0.25 * mass / 1000) * Math.exp(0.2 * random.nextGaussian());
    Rig rig =
        Rig.usual()
            .with(RigTrait.MASS_KG, mass)
            .with(RigTrait.DRAG_AREA_M2, dragArea)
            .with(RigTrait.ROLLING_RESISTANCE, between(random, 0.008, 0.014))
            .with(RigTrait.ROTATING_MASS_SHARE, between(random, 0.03, 0.08))
            .with(RigTrait.GEARBOX_EFFICIENCY, between(random, 0.94, 0.97))
            .with(RigTrait.AXLE_EFFICIENCY, between(random, 0.935, 0.97));
    List<Tour> tours = Country.larkmoor().tours();
    return new RigWorld(
        entered(mass * between(random, 0.7, 1.5), dragArea * Math.exp(0.2 * random.nextGaussian())),
        rig,
        tours.get(random.nextInt(tours.size())),
        new Weather(between(random, 0, 35), 3 * random.nextGaussian(), between(random, 0.5, 2)),
        1 + 0.03 * random.nextGaussian(),
        seed);
  }

  public double massKilograms() {
    return truth.of(RigTrait.MASS_KG);
  }

  public double dragAreaSquareMetres() {
    return truth.of(RigTrait.DRAG_AREA_M2);
  }

  /** The same world whose owner entered another mass, or none. */
  public RigWorld entering(OptionalDouble kilograms) {
    steadypull.vehicle.Rig rig = vehicle.rig();
    return new RigWorld(
        vehicle.withRig(
            new steadypull.vehicle.Rig(
                kilograms,
                rig.dragAreaSquareMetres(),
                rig.rollingResistance(),
                rig.tyreRadiusMetres())),
        truth,
        tour,
        weather,
        torqueShare,
        seed);
  }

  /** What the vehicle and its receiver tell. */
  public List<Sample> samples() {
    return samples(ReceiverQuality.usual());
  }

  /** What the vehicle and such a receiver tell, in the order of time. */
  public List<Sample> samples(ReceiverQuality quality) {
    Drive drive = DemoWorld.drive(scenario(), seed);
    SatelliteReceiver receiver = new SatelliteReceiver(quality, seed + 7);
    List<Sample> samples = new ArrayList<>();
    for (long second = 1; ; second++) {
      drive.advanceTo((double) second);
      Road.Place place = drive.place().orElseThrow();
      if (drive.isOver() || place.metres() > tour.length() - END_METRES) {
        samples.sort(Comparator.comparingLong(Sample::timeMicros));
        return samples;
      }
      long micros = second * SECOND_MICROS;
      poll(drive, micros - 400_000, samples);
      receiver
          .next(place, drive.isUnderRoof())
          .ifPresent(fix -> tell(fix, micros - 50_000, samples));
    }
  }

  /** What the trip tells of the rig. */
  public static RigFinding weigh(Vehicle vehicle, List<Sample> samples) {
    RigWeighing weighing = new RigWeighing(vehicle);
    samples.forEach(weighing::accept);
    return weighing.finish();
  }

  private void poll(Drive drive, long firstMicros, List<Sample> samples) {
    long micros = firstMicros;
    for (Sensor sensor : Sensor.values()) {
      Optional<Channel> channel = Channels.find(sensor.channel());
      if (channel.isPresent()) {
        samples.add(new Sample(channel.get(), micros, told(channel.get(), drive.read(sensor))));
      }
      micros += TURN_MICROS;
    }
  }

  private double told(Channel channel, double value) {
    return channel.equals(Channels.REFERENCE_TORQUE) ? Math.rint(value * torqueShare) : value;
  }

  private static void tell(Fix fix, long micros, List<Sample> samples) {
    samples.add(new Sample(Channels.LATITUDE, micros, fix.latitudeDegrees()));
    samples.add(new Sample(Channels.LONGITUDE, micros, fix.longitudeDegrees()));
    samples.add(new Sample(Channels.ALTITUDE, micros, fix.altitudeMetres()));
  }

  private Scenario scenario() {
    Scenario usual = DemoWorld.scenario("cool-day").orElseThrow();
    return new Scenario(
        "tour",
        tour.name(),
        Duration.ofSeconds((long) (tour.length() / 4)),
        usual.vehicleName(),
        usual.vehicleFile(),
        truth,
        new Course.OnRoad(
            tour, weather, tour.speeds((65 + seed % 25) / 3.6), new WarmStart(40, 85, 88, 70, 18)));
  }

  private static Vehicle entered(double massKilograms, double dragAreaSquareMetres) {
    String file = DemoWorld.vehicleFile(DemoWorld.scenario("cool-day").orElseThrow());
    try {
      Vehicle usual = VehicleJson.read(file, "the demo's vehicle file");
      return usual.withRig(
          new steadypull.vehicle.Rig(
              OptionalDouble.of(massKilograms),
              OptionalDouble.of(dragAreaSquareMetres),
              OptionalDouble.empty(),
              usual.rig().tyreRadiusMetres()));
    } catch (VehicleFileException broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static double between(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
