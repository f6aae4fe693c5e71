package steadypull.store;

import java.util.function.Predicate;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Copies a trip's entries from one library into another. A fault of the library that takes is told
 * as its own, though it comes up while the other one is read.
 */
final class TripCopy {
  private TripCopy() {}

  /**
   * Adds all events, and the samples of the chosen channels. Without places what was told of the
   * road ahead stays behind too.
   *
   * @param from holds the trip
   * @return what of it cannot be read
   */
  static TripDamage pour(TripLibrary from, String tripId, Predicate<Channel> chosen, AddedTrip to)
      throws LibraryException {
    try {
      return from.replay(
          tripId,
          entry -> {
            if (isChosen(entry, chosen)) {
              append(to, entry);
            }
          });
    } catch (NotTaken refused) {
      throw refused.fault;
    }
  }

  private static boolean isChosen(TripEntry entry, Predicate<Channel> chosen) {
    return switch (entry) {
      case TripEntry.OfSample(var sample) -> chosen.test(sample.channel());
      // Grades of a road that somebody else drove may tell which it is: they go with the places.
      case TripEntry.OfEvent(TripEvent event) ->
          event.kind() != TripEvent.Kind.ROAD || chosen.test(Channels.LATITUDE);
    };
  }

  private static void append(AddedTrip to, TripEntry entry) {
    try {
      to.append(entry);
    } catch (JdbiException fault) {
      throw new NotTaken(fault);
    }
  }

  private static final class NotTaken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final JdbiException fault;

    NotTaken(JdbiException fault) {
      super(fault);
      this.fault = fault;
    }
  }
}
