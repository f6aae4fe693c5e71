package steadypull.demo.plant;

/**
 * A towing vehicle that moves in fixed steps of {@value #STEP_SECONDS} s. The same rig, start, seed
 * and surroundings give the same numbers. Used by one thread at a time.
 */
public final class Plant {
  /** One step, s. */
  public static final double STEP_SECONDS = 0.05;

  private static final double KELVIN = 273.15;

  private final Rig rig;
  private final RoadForces forces;
  private final TorqueCurve curve;
  private final Driveline driveline;
  private final Driver driver;
  private final Engine engine;
  private final EngineControl control;
  private final Turbocharger turbo;
  private final ThermalSide thermal;
  private final SensorSet sensors;
  private final double inertia;
  private Surroundings around;
  private double seconds;
  private double speed;
  private double distance;
  private double wheelForce;
  private double fullTorque;

  /**
   * Puts a vehicle on the road.
   *
   * @param seed of the sensors' noise
   */
  public Plant(Rig rig, WarmStart start, Surroundings around, long seed) {
    this.rig = rig;
    this.around = around;
    forces = new RoadForces(rig);
    curve = new TorqueCurve(rig);
    driveline = new Driveline(rig, curve);
    inertia = rig.of(RigTrait.MASS_KG) * (1 + rig.of(RigTrait.ROTATING_MASS_SHARE));
    driver = new Driver(inertia);
    engine = new Engine(rig);
    control = new EngineControl(rig);
    turbo = new Turbocharger(rig, around);
    thermal = new ThermalSide(rig, start, around);
    speed = start.metresPerSecond();
    driveline.settle(speed, forces.at(speed, around), around.pressureKilopascals());
    sensors = new SensorSet(rig, seed, state());
  }

  /** Moves on by one step. */
  public void step(Surroundings now, Duty duty) {
    around = now;
    double resistance = forces.at(speed, now);
    switch (duty) {
      case Duty.HoldSpeed hold -> {
        double wish = driver.wheelForce(speed, hold.metresPerSecond(), resistance);
        driveline.step(STEP_SECONDS, speed, wish, now.pressureKilopascals());
        pull(wish, driveline.torqueFor(Math.max(0, wish)) + accessoryTorque());
        move(wish, resistance, hold.metresPerSecond());
        thermal.step(
            STEP_SECONDS, engine, turbo, driveline, speed + now.headwindMetresPerSecond(), now);
      }
      case Duty.HoldTorque hold -> {
        speed = hold.metresPerSecond();
        driveline.hold(speed, hold.gear());
        wheelForce = driveline.wheelForce(hold.newtonMetres());
        pull(wheelForce, hold.newtonMetres());
        distance += speed * STEP_SECONDS;
        thermal.step(STEP_SECONDS, engine, turbo, driveline, hold.coolingMetresPerSecond(), now);
      }
    }
    seconds += STEP_SECONDS;
    sensors.step(STEP_SECONDS, state());
    control.step(
        STEP_SECONDS,
        sensors.inside(Sensor.CHARGE_AIR_OUT),
        sensors.inside(Sensor.CHARGE_COOLANT),
        sensors.inside(Sensor.ENGINE_COOLANT));
  }

  private void pull(double wishedForce, double wishedTorque) {
    double pressure = around.pressureKilopascals();
    double turning = driveline.engineSpeed();
    fullTorque = curve.at(turning, pressure);
    boolean isOverrun = wishedForce < 0 && speed > 1;
    double torque = isOverrun ? -fullTorque : wishedTorque;
    turbo.step(
        STEP_SECONDS,
        engine.wishedAirFlow(torque, fullTorque, control.available(), turning),
        turning,
        pressure,
        thermal.compressorInCelsius() + KELVIN,
        thermal.chargeAirOutCelsius() + KELVIN);
    engine.step(
        torque,
        fullTorque,
        control.available(),
        driveline.torqueLeftByShift(),
        turning,
        turbo.airFlow());
  }

  private void move(double wish, double resistance, double wishedSpeed) {
    double pulling = driveline.wheelForce(engine.delivered() - accessoryTorque());
    wheelForce = wish <= 0 ? wish : Math.max(0, pulling);
    speed = Math.max(0, speed + STEP_SECONDS * (wheelForce - resistance) / inertia);
    if (wishedSpeed < 0.1 && speed < 0.1) {
      speed = 0;
    }
    distance += speed * STEP_SECONDS;
  }

  /** Fan, air conditioning and generator, N.m at the crankshaft. */
  private double accessoryTorque() {
    double turning = driveline.engineSpeed();
    double power =
        thermal.fanPower(turning) + rig.of(RigTrait.AIR_CONDITIONING_W) / 3 + 900; // estimated
    return power / (turning * 2 * Math.PI / 60);
  }

  /** What one sensor says, cut to its step. */
  public double read(Sensor sensor) {
    return sensors.read(sensor);
  }

  /** Metres since the start. */
  public double distance() {
    return distance;
  }

  /** Road speed, m/s. */
  public double speed() {
    return speed;
  }

  /** The truth behind the sensors. */
  public PlantState state() {
    var motion =
        new PlantState.Motion(
            speed,
            distance,
            wheelForce,
            driveline.gear(),
            driveline.isLocked(speed),
            driveline.engineSpeed());
    var work =
        new PlantState.Work(
            engine.demanded(),
            engine.delivered(),
            engine.friction(),
            fullTorque,
            control.available(),
            engine.fuel(),
            turbo.airFlow(),
            turbo.manifoldKilopascals());
    double shaft = engine.shaftPower(driveline.engineSpeed());
    return new PlantState(
        seconds, around, motion, work, thermal.temperatures(around), thermal.heat(engine, shaft));
  }
}
