package steadypull.demo.plant;

/** What the driver or the workshop asks of the vehicle. A closed set. */
public sealed interface Duty {

  /**
   * On the road: hold a speed as far as power allows.
   *
   * @param metresPerSecond 0 to 50
   */
  record HoldSpeed(double metresPerSecond) implements Duty {
    public HoldSpeed {
      if (!(metresPerSecond >= 0 && metresPerSecond <= 50)) {
        throw new IllegalArgumentException(
            "A speed to hold lies between 0 and 50 m/s, found " + metresPerSecond);
      }
    }
  }

  /**
   * On a chassis dynamometer: the rollers hold the speed, the driver asks for a torque.
   *
   * @param gear that is held, from 1
   * @param metresPerSecond speed of the rollers, 1 to 50
   * @param newtonMetres torque asked for at the crankshaft, 0 or more
   * @param coolingMetresPerSecond air that the workshop's fan blows at the radiators, as an
   *     equivalent road speed, 0 to 50
   */
  record HoldTorque(
      int gear, double metresPerSecond, double newtonMetres, double coolingMetresPerSecond)
      implements Duty {
    public HoldTorque {
      if (gear < 1) {
        throw new IllegalArgumentException("Gears count from 1, found " + gear);
      }
      if (!(metresPerSecond >= 1 && metresPerSecond <= 50)) {
        throw new IllegalArgumentException("Rollers turn at 1 to 50 m/s, found " + metresPerSecond);
      }
      if (!(newtonMetres >= 0)) {
        throw new IllegalArgumentException(
            "A torque to hold is zero or more, found " + newtonMetres);
      }
      if (!(coolingMetresPerSecond >= 0 && coolingMetresPerSecond <= 50)) {
        throw new IllegalArgumentException(
            "Cooling air moves at 0 to 50 m/s, found " + coolingMetresPerSecond);
      }
    }
  }
}
