package steadypull.road.load;

import steadypull.road.grade.DerivedChannels;

/**
 * From the crankshaft to the driven wheels, and back. Immutable.
 *
 * <p>T_wheel = T_engine * gear * axle * efficiency, for all driven wheels together; n_engine = v /
 * (2 pi r) * 60 * gear * axle while nothing slips; P = T n / 9549.3 (any vehicle-dynamics
 * handbook).
 *
 * @param axleRatio output-shaft turns per wheel turn, above 0
 * @param tyreRadiusMetres at which the driven wheels roll, above 0
 * @param efficiency share of the engine's power at the wheels, above 0 and at most 1
 */
public record WheelChain(double axleRatio, double tyreRadiusMetres, double efficiency) {
  /** What is counted with live too, where nobody tells how many wheels pull. */
  public static final double TWO_DRIVEN = DerivedChannels.DRIVELINE_EFFICIENCY;

  /** Transfer case and front axle take about 3 % more (common practice, no source). */
  public static final double FOUR_DRIVEN = 0.87;

  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 60_000 / (2 * Math.PI);

  public WheelChain {
    if (!(axleRatio > 0 && tyreRadiusMetres > 0 && efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException(
          "A wheel chain needs ratio and radius above 0 and an efficiency of 0 to 1, found %s, %s m, %s"
              .formatted(axleRatio, tyreRadiusMetres, efficiency));
    }
  }

  /**
   * What the engine does while it pulls.
   *
   * @param rpm r/min
   * @param newtonMetres at the crankshaft
   */
  public record Engine(double rpm, double newtonMetres) {
    /** Power at the crankshaft. */
    public double kilowatts() {
      return newtonMetres * rpm / NEWTON_METRE_RPM_PER_KILOWATT;
    }
  }

  /** Torque of all driven wheels together, N.m, of a torque at the crankshaft in a gear. */
  public double wheelNewtonMetres(double engineNewtonMetres, double gearRatio) {
    return engineNewtonMetres * gearRatio * axleRatio * efficiency;
  }

  /** Force of all driven wheels together, N, of a torque at the crankshaft in a gear. */
  public double wheelNewtons(double engineNewtonMetres, double gearRatio) {
    return wheelNewtonMetres(engineNewtonMetres, gearRatio) / tyreRadiusMetres;
  }

  /**
   * What the engine does in a gear, with everything locked.
   *
   * @param newtons at the wheels, 0 or more
   * @param metresPerSecond road speed
   * @param gearRatio engine turns per output-shaft turn
   */
  public Engine engine(double newtons, double metresPerSecond, double gearRatio) {
    double rpm = metresPerSecond / (2 * Math.PI * tyreRadiusMetres) * 60 * gearRatio * axleRatio;
    return new Engine(rpm, newtons * tyreRadiusMetres / (gearRatio * axleRatio * efficiency));
  }
}
