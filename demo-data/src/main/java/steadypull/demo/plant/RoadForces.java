package steadypull.demo.plant;

/** The forces that hold a vehicle back, in newtons, by the usual road load equation. */
final class RoadForces {
  private static final double GRAVITY = 9.80665; // ISO 2533:1975, m/s2

  private final double mass;
  private final double dragArea;
  private final double rollingResistance;

  RoadForces(Rig rig) {
    mass = rig.of(RigTrait.MASS_KG);
    dragArea = rig.of(RigTrait.DRAG_AREA_M2);
    rollingResistance = rig.of(RigTrait.ROLLING_RESISTANCE);
  }

  /** Everything together at a road speed in m/s. */
  double at(double speed, Surroundings around) {
    double slope = Math.atan(around.gradeShare());
    return rolling(slope) + drag(speed, around) + mass * GRAVITY * Math.sin(slope);
  }

  double rolling(double slopeRadians) {
    return mass * GRAVITY * rollingResistance * Math.cos(slopeRadians);
  }

  double drag(double speed, Surroundings around) {
    double through = speed + around.headwindMetresPerSecond();
    return 0.5 * around.airDensity() * dragArea * through * Math.abs(through);
  }
}
