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
import steadypull.road.StandardAtmosphere;
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

  private static final double FRESH_SECONDS = 5;

  /** An altitude is used once. */
  private static final double A_SECOND = 0.999;

  /** Under this engine power the brakes may be on or the engine may brake. */
  private static final double LEAST_PULL_KILOWATTS = 8;

  private static final double LOWEST_PULLING_METRES_PER_SECOND = 3;
  private static final double LOWEST_METRES_PER_SECOND = 2;

  /** A grade of which less is known is not told. */
  private static final double LARGEST_ERROR = 0.015;

  /** Outside air and its pressure change slowly. */
  private static final double WEATHER_FRESH_SECONDS = 600;

  private static final double USUAL_AIR_CELSIUS = 20;
  private static final double MICROS_PER_SECOND = 1e6;
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /**
   * Steps to which results are rounded, so that digits that mean nothing are neither kept nor
   * shown. Delivered torque comes in whole percents of the reference torque, which for 900 N.m in a
   * top gear are 25 N.m at the wheels and at 2000 r/min 1.9 kW; grade is told to 0.3 % at best
   * ({@link GradeEstimate}). Each step is at most a twentieth of that (estimated).
   */
  private static final double GRADE_STEPS_PER_PERCENT = 100;

  private static final double TORQUE_STEPS_PER_NEWTON_METRE = 1;
  private static final double POWER_STEPS_PER_KILOWATT = 10;

  /** Without one of these nothing can be told of the wheels. */
  private static final List<Channel> NEEDED =
      List.of(
          Channels.DELIVERED_TORQUE,
          Channels.REFERENCE_TORQUE,
          Channels.ENGINE_SPEED,
          Channels.VEHICLE_SPEED);

  private final Vehicle vehicle;
  private final GearInference gears;
  private final LatestSamples samples = new LatestSamples();
  private final GradeFilter grades = new GradeFilter();
  private final TorqueBalance balance = new TorqueBalance();
  private final CourseWatch course = new CourseWatch();
  private Optional<RoadSecond> lastSecond = Optional.empty();

  /** Computes for one vehicle. */
  public DerivedChannels(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.gears = new GearInference(vehicle.driveline(), vehicle.rig());
  }

  /** What may be told at best where those channels are measured; empty if nothing ever is. */
  public List<Channel> possible(Collection<Channel> measured) {
    Rig rig = vehicle.rig();
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
   * The derived samples of a whole second, in the order grade, torque, power; empty if nothing can
   * be told.
   *
   * @param timeMicros microseconds since trip start, later than the last tick
   */
  public List<Sample> tick(long timeMicros) {
    Optional<EnginePower> engine = engine(timeMicros);
    OptionalDouble speed = samples.within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS);
    if (speed.isEmpty()) {
      lastSecond = Optional.empty();
      balance.interrupt();
      return List.of();
    }
    double metresPerSecond = speed.getAsDouble() / KILOMETRES_PER_HOUR;
    OptionalDouble wheelKilowatts = wheelKilowatts(engine, metresPerSecond, timeMicros);
    weigh(timeMicros, engine, wheelKilowatts, metresPerSecond);
    List<Sample> derived = new ArrayList<>();
    grade(second(timeMicros, metresPerSecond, wheelKilowatts))
        .ifPresent(
            grade ->
                derived.add(
                    sample(Channels.ROAD_GRADE, timeMicros, grade * 100, GRADE_STEPS_PER_PERCENT)));
    wheelKilowatts.ifPresent(
        kilowatts -> derived.addAll(atWheels(timeMicros, kilowatts, metresPerSecond)));
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
              OptionalDouble wheels =
                  wheelKilowatts(engine(timeMicros), metresPerSecond, timeMicros);
              lastSecond = Optional.of(second(timeMicros, metresPerSecond, wheels));
            });
    return lastSecond;
  }

  private Optional<EnginePower> engine(long timeMicros) {
    return EnginePower.tell(samples, timeMicros)
        .filter(power -> power.basis() == EnginePower.Basis.TORQUE);
  }

  private List<Sample> atWheels(long timeMicros, double kilowatts, double metresPerSecond) {
    List<Sample> derived = new ArrayList<>();
    wheelTorque(kilowatts, metresPerSecond)
        .ifPresent(
            torque ->
                derived.add(
                    sample(
                        Channels.WHEEL_TORQUE, timeMicros, torque, TORQUE_STEPS_PER_NEWTON_METRE)));
    derived.add(sample(Channels.WHEEL_POWER, timeMicros, kilowatts, POWER_STEPS_PER_KILOWATT));
    return derived;
  }

  private static Sample sample(
      Channel channel, long timeMicros, double value, double stepsPerUnit) {
    return new Sample(channel, timeMicros, Math.rint(value * stepsPerUnit) / stepsPerUnit);
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

  /** The road load of the rig in the present air, or empty if its mass is unknown. */
  public Optional<RoadLoad> roadLoad(long timeMicros) {
    double kilopascals =
        samples
            .within(Channels.BAROMETRIC_PRESSURE, timeMicros, WEATHER_FRESH_SECONDS)
            .orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS);
    double celsius =
        samples
            .within(Channels.AMBIENT_AIR_TEMP, timeMicros, WEATHER_FRESH_SECONDS)
            .orElse(USUAL_AIR_CELSIUS);
    return RoadLoad.of(vehicle.rig(), StandardAtmosphere.density(kilopascals, celsius));
  }

  private RoadSecond second(
      long timeMicros, double metresPerSecond, OptionalDouble wheelKilowatts) {
    Optional<Traction> traction =
        metresPerSecond >= LOWEST_PULLING_METRES_PER_SECOND
            ? traction(timeMicros, metresPerSecond, wheelKilowatts)
            : Optional.empty();
    return new RoadSecond(
        timeMicros / MICROS_PER_SECOND,
        metresPerSecond,
        traction,
        samples.within(Channels.ALTITUDE, timeMicros, A_SECOND),
        turned(timeMicros));
  }

  private Optional<Turn> turned(long timeMicros) {
    OptionalDouble latitude = samples.within(Channels.LATITUDE, timeMicros, A_SECOND);
    OptionalDouble longitude = samples.within(Channels.LONGITUDE, timeMicros, A_SECOND);
    return latitude.isPresent() && longitude.isPresent()
        ? course.turned(
            timeMicros / MICROS_PER_SECOND, latitude.getAsDouble(), longitude.getAsDouble())
        : Optional.empty();
  }

  private Optional<Traction> traction(
      long timeMicros, double metresPerSecond, OptionalDouble wheelKilowatts) {
    OptionalDouble net = EnginePower.netKilowatts(samples, timeMicros);
    if (net.isEmpty() || wheelKilowatts.isEmpty()) {
      return Optional.empty();
    }
    boolean isPulling = net.getAsDouble() >= LEAST_PULL_KILOWATTS;
    double kilowatts = isPulling ? wheelKilowatts.getAsDouble() : net.getAsDouble();
    return roadLoad(timeMicros)
        .map(load -> new Traction(kilowatts * 1000 / metresPerSecond, isPulling, load));
  }

  private OptionalDouble grade(RoadSecond second) {
    grades.accept(second);
    lastSecond = Optional.of(second);
    Optional<GradeEstimate> told =
        grades
            .estimate()
            .filter(estimate -> estimate.error() <= LARGEST_ERROR)
            .filter(_ -> second.metresPerSecond() >= LOWEST_METRES_PER_SECOND);
    return told.isPresent() ? OptionalDouble.of(told.get().grade()) : OptionalDouble.empty();
  }

  private OptionalDouble wheelKilowatts(
      Optional<EnginePower> engine, double metresPerSecond, long timeMicros) {
    return engine.isPresent()
        ? OptionalDouble.of(wheelKilowatts(engine.get(), metresPerSecond, timeMicros))
        : OptionalDouble.empty();
  }

  private double wheelKilowatts(EnginePower engine, double metresPerSecond, long timeMicros) {
    OptionalDouble engineRpm = samples.within(Channels.ENGINE_SPEED, timeMicros, FRESH_SECONDS);
    double slip =
        gears
            .tell(engineRpm.orElse(0), metresPerSecond)
            .map(GearInference.Engaged::slip)
            .orElse(0.0);
    return engine.kilowatts() * DRIVELINE_EFFICIENCY * (1 - slip);
  }

  private OptionalDouble wheelTorque(double wheelKilowatts, double metresPerSecond) {
    OptionalDouble radius = vehicle.rig().tyreRadiusMetres();
    if (radius.isEmpty() || metresPerSecond < 1) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(wheelKilowatts * 1000 / metresPerSecond * radius.getAsDouble());
  }
}
