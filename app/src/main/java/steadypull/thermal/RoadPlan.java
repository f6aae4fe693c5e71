package steadypull.thermal;

import steadypull.road.RoadLoad;

/**
 * How a rig would be driven along a known road: at the speed that the driver likes as long as the
 * engine can hold it, at what the engine gives where it cannot. Immutable but for what the drive
 * has shown, which it reads.
 *
 * @param maps fuel and air that go with a power
 * @param load the rig's figures
 * @param gears gears that were seen
 * @param pull the most that the engine gives
 */
record RoadPlan(LoadMaps maps, RoadLoad load, GearsSeen gears, PullGuess pull) {
  /**
   * One draw of everything that the plan cannot know.
   *
   * @param slope the way that is taken
   * @param force of the rig
   * @param beside standard normal number for the errors of known grades
   * @param unknown the same for the road beyond
   * @param wish the same for the driver's speed and the gearbox
   * @param power the same for the most that the engine gives
   */
  record Draw(
      Slope slope,
      RoadForce.Draw force,
      double beside,
      double unknown,
      double wish,
      double power) {}

  /**
   * The drive of one draw.
   *
   * @param now the present load
   * @param cruise speed that the driver likes, m/s
   */
  PlannedDrive drive(Load now, double cruise, Draw draw) {
    return new PlannedDrive(this, now, cruise, draw);
  }
}
