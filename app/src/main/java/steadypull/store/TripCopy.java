package steadypull.store;

import java.util.function.Predicate;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.Channel;

/**
 * Copies a trip's entries from one library into another. A fault of the library that takes is told
 * as its own, though it comes up while the other one is read.
 */
final class TripCopy {
  private TripCopy() {}

  /**
   * Adds all events, and the samples of the chosen channels.
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
      case TripEntry.OfEvent _ -> true;
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
