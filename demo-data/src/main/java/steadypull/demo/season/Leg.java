package steadypull.demo.season;

/** A part of a drive on the road. A closed set. */
sealed interface Leg {

  /**
   * Drives along a road and stops at its end.
   *
   * @param from m from the town; where the vehicle stands already, if it is on that road
   * @param to m from the town
   * @param cruise wished speed where nothing forbids it, m/s
   */
  record Stretch(SeasonRoad road, double from, double to, double cruise) implements Leg {
    boolean leadsHome() {
      return to < from;
    }
  }

  /**
   * Stands with the engine idling.
   *
   * @param seconds 0 or more
   * @param mark what the driver notes on arrival; may be empty
   */
  record Stand(double seconds, String mark) implements Leg {}
}
