package steadypull.demo.road;

import java.util.List;
import steadypull.demo.plant.WarmStart;

/** Where and how a scenario is driven. A closed set. */
public sealed interface Course {

  /** How warm everything is at the start. */
  WarmStart start();

  /**
   * A wish that holds from a moment or place on, until the next.
   *
   * @param from s since the start, or m along the road
   * @param value m/s or N.m
   */
  record Wish(double from, double value) {}

  /**
   * A drive along a road or a tour.
   *
   * @param wishes speeds in m/s by distance in m, distances rising, the first at 0
   */
  record OnRoad(Track road, Weather weather, List<Wish> wishes, WarmStart start) implements Course {
    public OnRoad {
      wishes = checked(wishes);
    }
  }

  /**
   * A pull on a chassis dynamometer.
   *
   * @param wishes torques at the crankshaft in N.m by time in s, times rising, the first at 0
   * @param gear that is held
   * @param metresPerSecond speed of the rollers
   * @param coolingMetresPerSecond air of the workshop's fan, as an equivalent road speed
   */
  record OnDynamometer(
      double celsius,
      double altitude,
      int gear,
      double metresPerSecond,
      double coolingMetresPerSecond,
      List<Wish> wishes,
      WarmStart start)
      implements Course {
    public OnDynamometer {
      wishes = checked(wishes);
    }
  }

  private static List<Wish> checked(List<Wish> wishes) {
    if (wishes.isEmpty() || wishes.getFirst().from() != 0) {
      throw new IllegalArgumentException("The first wish holds from 0 on, found " + wishes);
    }
    return List.copyOf(wishes);
  }

  /** The wish that holds at a time or distance. */
  static double wishAt(List<Wish> wishes, double at) {
    double value = wishes.getFirst().value();
    for (Wish wish : wishes) {
      if (wish.from() <= at) {
        value = wish.value();
      }
    }
    return value;
  }
}
