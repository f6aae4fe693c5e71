package steadypull.demo.season;

import java.util.Optional;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.road.Road;

/** Who tells the vehicle what to do, step by step. One thread at a time. */
sealed interface Guide permits RoadGuide, RollerGuide {

  /**
   * Looks where the vehicle is.
   *
   * @param metres driven since the drive began
   * @param metresPerSecond road speed
   * @param seconds that the step takes
   */
  void look(double metres, double metresPerSecond, double seconds);

  /**
   * What is around the vehicle.
   *
   * @param gust of the wind, in standard deviations
   */
  Surroundings around(double gust);

  Duty duty();

  boolean isOver();

  /** Where the receiver is, or empty if no satellite is seen there. */
  Optional<Road.Place> place();

  /** What somebody notes now; empty most of the time. Each note is handed out once. */
  Optional<String> takeMark();
}
