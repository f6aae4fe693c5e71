package steadypull.compare;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.plant.WarmStart;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * A trip that a plant drives stage by stage, its sensors read once a second; what was driven is
 * known, what is heard is as coarse as a vehicle tells it.
 */
final class PlantTrip {
  private static final int STEPS_A_SECOND = (int) Math.round(1 / Plant.STEP_SECONDS);
  static final int GEAR = 4;
  static final double ROLLERS = 22;
  static final double FAN = 10;

  private final Rig rig;
  private final Plant plant;
  private final double celsius;
  private final List<Sample> samples = new ArrayList<>();
  private int seconds;

  private PlantTrip(Rig rig, double celsius, double chargeCoolant, long seed) {
    this.rig = rig;
    this.celsius = celsius;
    plant = new Plant(rig, new WarmStart(chargeCoolant, 88, 90, 70, ROLLERS), around(0), seed);
  }

  /** On the rollers of a workshop, warmed up. */
  static PlantTrip onRollers(long seed) {
    return new PlantTrip(Rig.usual(), 21, 30, seed);
  }

  static PlantTrip onRollers(Rig rig, double celsius, double chargeCoolant, long seed) {
    return new PlantTrip(rig, celsius, chargeCoolant, seed);
  }

  private Surroundings around(double grade) {
    return new Surroundings(grade, celsius, 100.6, 0);
  }

  /** Some seconds on the rollers at a share of full torque. */
  PlantTrip rollers(int lasts, double share) {
    double torque = share * rig.of(RigTrait.PEAK_TORQUE_NM);
    return drive(lasts, 0, new Duty.HoldTorque(GEAR, ROLLERS, torque, FAN));
  }

  /** Some seconds on a road of that grade. */
  PlantTrip road(int lasts, double grade, double metresPerSecond) {
    return drive(lasts, grade, new Duty.HoldSpeed(metresPerSecond));
  }

  private PlantTrip drive(int lasts, double grade, Duty duty) {
    for (int second = 0; second < lasts; second++) {
      read();
      for (int step = 0; step < STEPS_A_SECOND; step++) {
        plant.step(around(grade), duty);
      }
      seconds++;
    }
    return this;
  }

  private void read() {
    for (Sensor sensor : Sensor.values()) {
      Channels.find(sensor.channel()).ifPresent(channel -> tell(channel, plant.read(sensor)));
    }
  }

  /** Says something that no sensor of the plant tells. */
  PlantTrip tell(Channel channel, double value) {
    samples.add(new Sample(channel, seconds * 1_000_000L, value));
    return this;
  }

  /** How long it has lasted. */
  int seconds() {
    return seconds;
  }

  Plant plant() {
    return plant;
  }

  List<Sample> samples() {
    return List.copyOf(samples);
  }

  /** Those that came after so many. */
  List<Sample> samplesFrom(int count) {
    return List.copyOf(samples.subList(count, samples.size()));
  }

  TripSeconds read(String name) {
    return read(name, _ -> true, 0);
  }

  /**
   * As it comes in over a link.
   *
   * @param heard which samples come through
   * @param laterMicros how much later everything comes
   */
  TripSeconds read(String name, Predicate<Sample> heard, long laterMicros) {
    return of(
        name,
        samples.stream()
            .filter(heard)
            .map(
                sample ->
                    new Sample(sample.channel(), sample.timeMicros() + laterMicros, sample.value()))
            .toList());
  }

  static TripSeconds of(String name, List<Sample> samples, String... calibrations) {
    Vehicle vehicle = Vehicle.unknown("Wattle 9", CoolingLayout.WATER_TO_AIR);
    SecondsReading reading =
        new SecondsReading(vehicle, samples.stream().map(Sample::channel).distinct().toList());
    samples.forEach(reading::accept);
    return reading.finish(
        new TripSeconds.Said(
            name,
            Optional.of(LocalDate.of(2026, 5, 4)),
            vehicle,
            OptionalDouble.empty(),
            List.of(calibrations)));
  }

  static RunSource before(TripSeconds trip) {
    return new RunSource(trip, Side.BEFORE, 0, Optional.empty());
  }

  static RunSource after(TripSeconds trip) {
    return new RunSource(trip, Side.AFTER, 1, Optional.empty());
  }
}
