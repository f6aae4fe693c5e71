package steadypull.road.grade;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;
import steadypull.road.RoadLoad;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/**
 * Computes road grade, wheel torque and wheel power once a second from what the vehicle tells. What
 * cannot be told gives no sample. Deterministic; pipeline thread only.
 */
public final class DerivedChannels {
  /**
   * From crankshaft to wheels, 0.88 to 0.94, less with four driven (common practice, no source).
   */
  public static final double DRIVELINE_EFFICIENCY = 0.90;

  /** Over so many seconds {@link #loadGrade} is found. */
  public static final double LOAD_GRADE_SECONDS = TorqueBalance.WINDOW_SECONDS;

  private static final double FRESH_SECONDS = 5;
  private static final double LOWEST_METRES_PER_SECOND = 2;

  /** A grade of which less is known is not told. */
  private static final double LARGEST_ERROR = 0.015;

  private static final double MICROS_PER_SECOND = 1e6;
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /** Without one of these nothing can be told of the wheels. */
  private static final List<Channel> NEEDED =
      List.of(
          Channels.DELIVERED_TORQUE,
          Channels.REFERENCE_TORQUE,
          Channels.ENGINE_SPEED,
          Channels.VEHICLE_SPEED);

  private final Rig rig;
  private final LatestSamples samples = new LatestSamples();
  private final WheelOutput wheels;
  private final RoadReading road;
  private final GradeFilter grades = new GradeFilter();
  private final TorqueBalance balance = new TorqueBalance();
  private Optional<RoadSecond> lastSecond = Optional.empty();
  private OptionalDouble routeMetres = OptionalDouble.empty();

  /** Computes for one vehicle. */
  public DerivedChannels(Vehicle vehicle) {
    this.rig = vehicle.rig();
    this.wheels = new WheelOutput(vehicle, samples);
    this.road = new RoadReading(rig, samples);
  }

  /** What may be told at best where those channels are measured; empty if nothing ever is. */
  public List<Channel> possible(Collection<Channel> measured) {
    boolean isPullTold = measured.containsAll(NEEDED);
    boolean isHeightTold =
        measured.contains(Channels.VEHICLE_SPEED) && measured.contains(Channels.ALTITUDE);
    List<Channel> possible = new ArrayList<>();
    if (isHeightTold || (isPullTold && rig.massKilograms().isPresent())) {
      possible.add(Channels.ROAD_GRADE);
    }
    if (isPullTold && rig.tyreRadiusMetres().isPresent()) {
      possible.add(Channels.WHEEL_TORQUE);
    }
    if (isPullTold) {
      possible.add(Channels.WHEEL_POWER);
    }
    return List.copyOf(possible);
  }

  /** Takes a measured sample; times do not run backwards. */
  public void accept(Sample sample) {
    samples.accept(sample);
  }

  /**
   * Takes the height that an imported route tells for the place at the end of the second that is
   * ticked next. The grade that is told counts it with an error of its own; {@link #second}, from
   * which roads are learned, does not.
   *
   * @param metresUp in the route's own datum
   */
  public void acceptRouteHeight(double metresUp) {
    routeMetres = OptionalDouble.of(metresUp);
  }

  /**
   * The derived samples of a whole second, in the order grade, torque, power; empty if nothing can
   * be told.
   *
   * @param timeMicros microseconds since trip start, later than the last tick
   */
  public List<Sample> tick(long timeMicros) {
    OptionalDouble speed = samples.within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS);
    if (speed.isEmpty()) {
      lastSecond = Optional.empty();
      balance.interrupt();
      return List.of();
    }
    return tick(timeMicros, speed.getAsDouble() / KILOMETRES_PER_HOUR);
  }

  private List<Sample> tick(long timeMicros, double metresPerSecond) {
    Optional<EnginePower> engine = engine(timeMicros);
    OptionalDouble kilowatts = wheelKilowatts(engine, metresPerSecond, timeMicros);
    weigh(timeMicros, engine, kilowatts, metresPerSecond);
    List<Sample> derived = new ArrayList<>();
    grade(road.second(timeMicros, metresPerSecond, kilowatts))
        .ifPresent(grade -> derived.add(RoundedSample.grade(timeMicros, grade)));
    if (kilowatts.isPresent()) {
      wheels
          .newtonMetres(kilowatts.getAsDouble(), metresPerSecond)
          .ifPresent(torque -> derived.add(RoundedSample.wheelTorque(timeMicros, torque)));
      derived.add(RoundedSample.wheelPower(timeMicros, kilowatts.getAsDouble()));
    }
    return List.copyOf(derived);
  }

  /**
   * What a whole second tells of the road, for whoever asks for nothing that is derived from it: in
   * place of {@link #tick}, at a fraction of its price. Empty if the second tells no speed.
   *
   * @param timeMicros microseconds since trip start, later than the last
   */
  public Optional<RoadSecond> look(long timeMicros) {
    lastSecond = Optional.empty();
    samples
        .within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS)
        .ifPresent(
            kilometresPerHour -> {
              double metresPerSecond = kilometresPerHour / KILOMETRES_PER_HOUR;
              OptionalDouble atWheels =
                  wheelKilowatts(engine(timeMicros), metresPerSecond, timeMicros);
              lastSecond = Optional.of(road.second(timeMicros, metresPerSecond, atWheels));
            });
    return lastSecond;
  }

  private Optional<EnginePower> engine(long timeMicros) {
    return EnginePower.tell(samples, timeMicros)
        .filter(power -> power.basis() == EnginePower.Basis.TORQUE);
  }

  private OptionalDouble wheelKilowatts(
      Optional<EnginePower> engine, double metresPerSecond, long timeMicros) {
    return engine.isPresent()
        ? OptionalDouble.of(wheels.kilowatts(engine.get(), metresPerSecond, timeMicros))
        : OptionalDouble.empty();
  }

  /** What the last tick's second told of the road, or empty if it told no speed. */
  public Optional<RoadSecond> second() {
    return lastSecond;
  }

  /** The grade at the last tick with its error, however large, or empty if there is none. */
  public Optional<GradeEstimate> gradeEstimate() {
    return lastSecond.isEmpty() ? Optional.empty() : grades.estimate();
  }

  /**
   * The grade, as a fraction, that the load of the last seconds amounts to by the torque balance
   * alone, acceleration left out; empty if it cannot be told. It answers for the load and errs with
   * mass and wind as the load does, where {@link #gradeEstimate} answers for the road.
   */
  public OptionalDouble loadGrade(long timeMicros) {
    Optional<RoadLoad> load = roadLoad(timeMicros);
    return load.isPresent() ? balance.grade(load.get()) : OptionalDouble.empty();
  }

  /** The road load of the rig in the present air, or empty if its mass is unknown. */
  public Optional<RoadLoad> roadLoad(long timeMicros) {
    return road.load(timeMicros);
  }

  private void weigh(
      long timeMicros,
      Optional<EnginePower> engine,
      OptionalDouble wheelKilowatts,
      double metresPerSecond) {
    Optional<RoadLoad> load = roadLoad(timeMicros);
    if (engine.isEmpty() || wheelKilowatts.isEmpty() || load.isEmpty()) {
      balance.interrupt();
      return;
    }
    balance.accept(
        timeMicros / MICROS_PER_SECOND,
        load.get(),
        engine.get().kilowatts(),
        wheelKilowatts.getAsDouble(),
        metresPerSecond);
  }

  private OptionalDouble grade(RoadSecond second) {
    grades.accept(routeMetres.isPresent() ? second.alongRoute(routeMetres.getAsDouble()) : second);
    routeMetres = OptionalDouble.empty();
    lastSecond = Optional.of(second);
    Optional<GradeEstimate> told =
        grades
            .estimate()
            .filter(estimate -> estimate.error() <= LARGEST_ERROR)
            .filter(_ -> second.metresPerSecond() >= LOWEST_METRES_PER_SECOND);
    return told.isPresent() ? OptionalDouble.of(told.get().grade()) : OptionalDouble.empty();
  }
}
