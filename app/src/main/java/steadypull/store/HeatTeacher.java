package steadypull.store;

import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/** Finds out what a finished trip tells of its vehicle's heat. Any thread. */
public interface HeatTeacher {
  /**
   * Begins to look at a trip.
   *
   * @param vehicle as it was when the trip began
   * @param details what was said of the trip
   */
  Look begin(Vehicle vehicle, TripDetails details);

  /** One look at one trip, on one thread. */
  interface Look {
    /** Takes the next entry of the trip, in order. */
    void accept(TripEntry entry);

    /** What the trip has told. */
    TripHeat finish();
  }
}
