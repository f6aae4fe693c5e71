package steadypull.demo.season;

import java.util.List;
import steadypull.demo.plant.Duty;
import steadypull.demo.road.Weather;

/** What is driven. A closed set. */
sealed interface Outing {

  /**
   * On the road.
   *
   * @param legs the first one stands or leaves the town
   * @param weather as it meets somebody who drives away from the town
   */
  record OnTheRoad(List<Leg> legs, Weather weather) implements Outing {
    public OnTheRoad {
      legs = List.copyOf(legs);
    }
  }

  /**
   * On the workshop's chassis dynamometer.
   *
   * @param stages one after the other
   * @param celsius of the room
   */
  record OnRollers(List<Stage> stages, double celsius) implements Outing {
    public OnRollers {
      stages = List.copyOf(stages);
    }
  }

  /**
   * A part of a run on the dynamometer.
   *
   * @param seconds how long
   * @param duty what is asked for
   * @param mark what the operator notes at its beginning; may be empty
   */
  record Stage(double seconds, Duty duty, String mark) {}
}
