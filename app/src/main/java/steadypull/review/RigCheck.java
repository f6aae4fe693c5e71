package steadypull.review;

import steadypull.channel.Channels;
import steadypull.road.load.RigFinding;
import steadypull.road.load.RigWeighing;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Weighs the rig of a trip of the library. Stateless; any thread that may read the library. */
public final class RigCheck {
  private RigCheck() {}

  /**
   * What a trip tells of its rig. Takes some tenths of a second for each hour of the trip, nothing
   * if it has no altitude or torque.
   */
  public static RigFinding of(TripLibrary library, TripSummary trip) throws LibraryException {
    if (!trip.channels().contains(Channels.DELIVERED_TORQUE)) {
      return new RigFinding.CannotTell(RigFinding.Reason.NO_TORQUE);
    }
    if (!trip.channels().contains(Channels.ALTITUDE)) {
      return new RigFinding.CannotTell(RigFinding.Reason.NO_ALTITUDE);
    }
    RigWeighing weighing = new RigWeighing(library.vehicleOf(trip.id()));
    try {
      library.replay(trip.id(), entry -> take(entry, weighing));
    } catch (LibraryException damaged) {
      // what else is known of the trip is shown all the same; `check` tells of the damage
      return new RigFinding.CannotTell(RigFinding.Reason.UNREADABLE);
    }
    return told(weighing.finish(), library, trip);
  }

  /** A trip that tells too little because of damage did not tell too little. */
  private static RigFinding told(RigFinding found, TripLibrary library, TripSummary trip)
      throws LibraryException {
    return found instanceof RigFinding.CannotTell && !library.damage(trip.id()).parts().isEmpty()
        ? new RigFinding.CannotTell(RigFinding.Reason.UNREADABLE)
        : found;
  }

  private static void take(TripEntry entry, RigWeighing weighing) {
    switch (entry) {
      case TripEntry.OfSample told -> weighing.accept(told.sample());
      case TripEntry.OfEvent _ -> {
        // marks, advice and link states weigh nothing
      }
    }
  }
}
