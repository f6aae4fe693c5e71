package steadypull.store;

import java.util.List;
import java.util.Optional;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.TripHeat;

/**
 * Looks at each trip that has ended once, and keeps what it tells of its vehicle's heat. A program
 * that is killed between leaves the trip waiting; what two programs find out counts once. A trip at
 * which the models fail is left out and told, the others go on. Any thread; the work is done on the
 * caller's.
 */
final class HeatLearning implements Learning {
  private final TripLibrary library;
  private final LibraryConnection connection;
  private final HeatTeacher teacher;
  private final UnlearntTrips unlearnt = new UnlearntTrips("learn how the vehicle takes heat");

  /** Whether learning is to end: the trip under work waits for the next time. */
  private volatile boolean isStopped;

  HeatLearning(TripLibrary library, LibraryConnection connection, HeatTeacher teacher) {
    this.library = library;
    this.connection = connection;
    this.teacher = teacher;
  }

  @Override
  public boolean next() throws LibraryException {
    Optional<HeatRows.Waiting> waiting =
        isStopped
            ? Optional.empty()
            : connection.ask(
                "find a trip that was not learnt from",
                handle -> HeatRows.firstWaiting(handle, unlearnt));
    return waiting.isPresent() && learn(waiting.get());
  }

  @Override
  public void stop() {
    isStopped = true;
  }

  private boolean learn(HeatRows.Waiting trip) throws LibraryException {
    try {
      TripHeat told = told(trip.tripId());
      connection.change(
          "keep what trip " + trip.tripId() + " has taught",
          handle -> HeatRows.told(handle, trip, told));
      return true;
    } catch (LearningStopped e) {
      return false;
    } catch (RuntimeException fault) {
      // One trip that the models cannot take must not end learning for all others; it is told.
      unlearnt.add(trip.origin(), trip.tripId(), fault);
      return true;
    }
  }

  /** What to tell of trips that could not be learnt from since the library was opened. */
  List<String> unlearnt() {
    return unlearnt.told();
  }

  /** A trip that cannot be read teaches nothing. */
  private TripHeat told(String tripId) throws LibraryException {
    try {
      HeatTeacher.Look look =
          teacher.begin(library.vehicleOf(tripId), library.find(tripId).details());
      library.replay(
          tripId,
          entry -> {
            if (isStopped) {
              throw new LearningStopped();
            }
            look.accept(entry);
          });
      return look.finish();
    } catch (LibraryException e) {
      if (e.reason() == Reason.DAMAGED) {
        return TripHeat.NOTHING;
      }
      throw e;
    }
  }

  /** Ends the reading of a trip. */
  @SuppressWarnings("serial") // never serialised
  private static final class LearningStopped extends RuntimeException {
    LearningStopped() {
      super("learning was to end", null, false, false);
    }
  }
}
