package steadypull.road;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.vehicle.Rig;

/**
 * The forces on a rig that moves along a road. Immutable.
 *
 * <p>F = m g Crr cos a + rho/2 CdA v2 + m g sin a + m_eff dv/dt with a = atan(grade): the equation
 * of longitudinal motion of any vehicle-dynamics handbook.
 *
 * @param massKilograms mass of vehicle and trailer, above 0
 * @param rollingResistance dimensionless, 0 or more
 * @param dragAreaSquareMetres drag coefficient times frontal area, 0 or more
 * @param airDensity kg/m3, above 0
 */
public record RoadLoad(
    double massKilograms,
    double rollingResistance,
    double dragAreaSquareMetres,
    double airDensity) {
  /** Light truck and trailer tyres run at 0.008 to 0.015 (common practice, no source). */
  private static final double USUAL_ROLLING_RESISTANCE = 0.010;

  /** A pickup with a box-shaped trailer: 3.5 to 5.5 m2 (common practice, no source). */
  private static final double USUAL_DRAG_AREA = 4.2;

  /** Wheels and driveline spin up too: 3 to 8 % of the mass (common practice, no source). */
  public static final double ROTATING_MASS_FACTOR = 1.05;

  public RoadLoad {
    if (!(massKilograms > 0
        && rollingResistance >= 0
        && dragAreaSquareMetres >= 0
        && airDensity > 0)) {
      throw new IllegalArgumentException(
          "A road load needs mass and air density above 0, rolling and drag of 0 or more, found"
              + " %s kg, %s kg/m3, %s, %s m2"
                  .formatted(massKilograms, airDensity, rollingResistance, dragAreaSquareMetres));
    }
  }

  /**
   * The load of a rig, with usual figures for rolling and drag where the rig has none; empty if its
   * mass is unknown, because no usual mass exists: trailers weigh 0.5 to 20 t.
   */
  public static Optional<RoadLoad> of(Rig rig, double airDensity) {
    if (rig.massKilograms().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new RoadLoad(
            rig.massKilograms().getAsDouble(),
            rig.rollingResistance().orElse(USUAL_ROLLING_RESISTANCE),
            rig.dragAreaSquareMetres().orElse(USUAL_DRAG_AREA),
            airDensity));
  }

  /** Rolling force in newtons on a grade given as a fraction (0.06 for 6 %). */
  public double rollingNewtons(double grade) {
    // cos(atan(g)) = 1 / sqrt(1 + g2) and sin(atan(g)) = g times that: exact, and many times
    // faster.
    return weightNewtons() * rollingResistance / Math.sqrt(1 + grade * grade);
  }

  /** Drag in newtons at an air speed in m/s. */
  public double dragNewtons(double airMetresPerSecond) {
    return airDensity
        / 2
        * dragAreaSquareMetres
        * airMetresPerSecond
        * Math.abs(airMetresPerSecond);
  }

  /** Grade force in newtons; negative downhill. */
  public double gradeNewtons(double grade) {
    return weightNewtons() * grade / Math.sqrt(1 + grade * grade);
  }

  /** Force at the wheels in newtons at a steady speed in m/s without wind. */
  public double forceNewtons(double metresPerSecond, double grade) {
    return rollingNewtons(grade) + dragNewtons(metresPerSecond) + gradeNewtons(grade);
  }

  /** Power at the wheels in kW at a steady speed in m/s without wind; negative if it must brake. */
  public double kilowatts(double metresPerSecond, double grade) {
    return forceNewtons(metresPerSecond, grade) * metresPerSecond / 1000;
  }

  /** Mass that resists acceleration, spinning parts included, kg. */
  public double inertialKilograms() {
    return massKilograms * ROTATING_MASS_FACTOR;
  }

  /**
   * The grade, as a fraction, on which a force at the wheels is balanced; empty if no road is that
   * steep.
   *
   * @param newtons force at the wheels less drag and acceleration
   */
  public OptionalDouble gradeUnder(double newtons) {
    // sin a + Crr cos a = f  has the root  a = asin(f / sqrt(1 + Crr2)) - atan(Crr)
    double sine = newtons / weightNewtons() / Math.hypot(1, rollingResistance);
    if (Math.abs(sine) >= 1) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Math.tan(Math.asin(sine) - Math.atan(rollingResistance)));
  }

  private double weightNewtons() {
    return massKilograms * StandardAtmosphere.GRAVITY;
  }
}
