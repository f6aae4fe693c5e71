package steadypull.demo.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A season of an invented workshop, March to August 2026: its customers' vehicles on the same roads
 * again and again, and on the dynamometer before and after changes. Immutable.
 */
public final class Season {
  private final List<SeasonTrip> trips;

  private Season(List<SeasonTrip> trips) {
    this.trips = List.copyOf(trips);
  }

  /**
   * The season of a seed. The calendar is always the same; traffic lights, gusts, noise and the
   * moments of arrival differ.
   */
  public static Season of(long seed) {
    Random seeds = new Random(seed);
    List<SeasonTrip> trips = new ArrayList<>();
    for (CalendarRow row : SeasonCalendar.rows()) {
      trips.add(new SeasonTrip(row, seeds.nextLong()));
    }
    return new Season(trips);
  }

  /** The trips, oldest first. */
  public List<SeasonTrip> trips() {
    return trips;
  }
}
