package steadypull.drive;

import java.util.List;
import java.util.Optional;
import steadypull.advice.AdviceEvent;
import steadypull.store.LibraryException;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/**
 * How often advice to take load off worked, as trips have kept it. Immutable.
 *
 * @param given advice whose end was seen, 0 or more
 * @param followed times that the driver followed it
 * @param held times that it then held: no limit reached, no power cut
 */
public record AdviceRecord(int given, int followed, int held) {
  private static final AdviceRecord NONE = new AdviceRecord(0, 0, 0);

  public AdviceRecord {
    if (held < 0 || followed < held || given < followed) {
      throw new IllegalArgumentException(
          "Advice holds at most as often as it is followed, and is followed at most as often as it is given, found %d, %d and %d"
              .formatted(held, followed, given));
    }
  }

  /** What a trip's events tell. */
  public static AdviceRecord of(List<TripEvent> events) {
    int held = KeptAdvice.count(events, AdviceEvent.Kind.ADVICE_HELD);
    int followed = held + KeptAdvice.count(events, AdviceEvent.Kind.ADVICE_FAILED);
    int given = followed + KeptAdvice.count(events, AdviceEvent.Kind.ADVICE_NOT_FOLLOWED);
    return new AdviceRecord(given, followed, held);
  }

  /** What all trips of a vehicle tell. */
  public static AdviceRecord ofVehicle(TripLibrary library, String name) throws LibraryException {
    AdviceRecord all = NONE;
    for (TripSummary trip : library.trips(Optional.empty())) {
      if (trip.vehicleName().equals(name)) {
        AdviceRecord one = of(library.events(trip.id()));
        all =
            new AdviceRecord(
                all.given + one.given, all.followed + one.followed, all.held + one.held);
      }
    }
    return all;
  }
}
