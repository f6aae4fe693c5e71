package steadypull.demo.plant;

/**
 * The truth at one moment, before any sensor. Immutable.
 *
 * @param seconds since the drive began
 * @param around what is around the vehicle
 * @param motion how the vehicle moves
 * @param work what the engine does
 * @param temperatures where it is how hot
 * @param heat what flows and what is stored
 */
public record PlantState(
    double seconds,
    Surroundings around,
    Motion motion,
    Work work,
    Temperatures temperatures,
    Heat heat) {

  /**
   * How the vehicle moves.
   *
   * @param speed m/s
   * @param distance m since the drive began
   * @param wheelForce N, after losses; negative while braking
   * @param gear from 1
   * @param isLockedUp whether the converter is locked
   * @param engineSpeed r/min
   */
  public record Motion(
      double speed,
      double distance,
      double wheelForce,
      int gear,
      boolean isLockedUp,
      double engineSpeed) {}

  /**
   * What the engine does.
   *
   * @param demandedTorque N.m at the crankshaft
   * @param deliveredTorque N.m at the crankshaft
   * @param frictionTorque N.m
   * @param fullTorque N.m, without derating
   * @param availableShare share of full torque that the engine control allows, 0 to 1
   * @param fuel kg/s
   * @param airFlow kg/s
   * @param manifoldPressure kPa absolute
   */
  public record Work(
      double demandedTorque,
      double deliveredTorque,
      double frictionTorque,
      double fullTorque,
      double availableShare,
      double fuel,
      double airFlow,
      double manifoldPressure) {}

  /**
   * Where it is how hot, all in degC.
   *
   * @param chargeCoolant water entering the charge cooler; outside air where there is no water
   */
  public record Temperatures(
      double outsideAir,
      double compressorIn,
      double chargeAirIn,
      double chargeAirOut,
      double chargeCoolant,
      double engineCoolant,
      double engineOil,
      double gearboxFluid,
      double exhaustBeforeTurbine,
      double exhaustAfterTurbine) {}

  /**
   * Flows in W, stores in J above 0 degC.
   *
   * @param fanEngagement 0 to 1
   */
  public record Heat(
      double fromFuel,
      double toShaft,
      double intoEngineCoolant,
      double fromEngineRadiator,
      double storedInEngineCoolant,
      double fromChargeAir,
      double fromChargeRadiator,
      double storedInChargeCircuit,
      double fanEngagement) {}

  /** Whether the engine control takes torque away that the driver asks for, 1 % or more. */
  public boolean isDerated() {
    double allowed = work.fullTorque() * work.availableShare();
    return work.demandedTorque() - allowed > 0.01 * work.fullTorque();
  }
}
