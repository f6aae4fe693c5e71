package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.store.column.SegmentBuilder;

/** Brings trips to their end that a crash, a kill or an empty battery has left behind. */
final class LeftBehind {
  /** What the event says that such a trip ends with. */
  static final String DETAIL =
      "The program or the tablet stopped while the trip was recorded. Everything up to the last"
          + " second that was written is here.";

  private LeftBehind() {}

  /** Seals every trip that nobody records any more and returns their ids, oldest first. */
  static List<String> seal(LibraryConnection library) throws LibraryException {
    List<String> sealed = new ArrayList<>();
    for (TripRow trip : library.ask("look for unfinished trips", LeftBehind::unsealed)) {
      if (isSealedNow(library, trip)) {
        sealed.add(trip.id());
      }
    }
    return sealed;
  }

  /** One trip that cannot be read to its end does not keep the others from theirs. */
  private static boolean isSealedNow(LibraryConnection library, TripRow trip)
      throws LibraryException {
    try {
      return sealIfNobodyRecords(library, trip);
    } catch (LibraryException e) {
      if (e.reason() == LibraryException.Reason.DAMAGED) {
        return false;
      }
      throw e;
    }
  }

  private static boolean sealIfNobodyRecords(LibraryConnection library, TripRow trip)
      throws LibraryException {
    Optional<RecordingLock> lock = RecordingLock.takeOver(library.file(), trip.id());
    if (lock.isEmpty()) {
      return false;
    }
    try {
      return seal(library, trip);
    } finally {
      lock.get().close();
    }
  }

  private static boolean seal(LibraryConnection library, TripRow trip) throws LibraryException {
    return library.change(
        "bring trip " + trip.id() + " to its end",
        handle -> {
          // Asked again: somebody else may have sealed it before we held the lock.
          if (!unsealed(handle).contains(trip)) {
            return false;
          }
          joinShortSegments(handle, trip.key());
          handle
              .createUpdate(Sql.of("insertLastEvent"))
              .bind("tripKey", trip.key())
              .bind("kind", TripEvent.Kind.RECORDING.word())
              .bind("detail", DETAIL)
              .execute();
          handle.createUpdate(Sql.of("sealTrip")).bind("tripKey", trip.key()).execute();
          TripRow.tellTwice(handle, trip.key());
          return true;
        });
  }

  private static void joinShortSegments(Handle handle, long tripKey) {
    SegmentRows rows = new SegmentRows(tripKey);
    SegmentBuilder samples = new SegmentBuilder();
    long first = -1;
    for (SegmentRows.Place place : rows.places(handle)) {
      if (first >= 0 || place.sampleCount() < TripWriter.LONG_SEGMENT) {
        first = first < 0 ? place.firstSample() : first;
        rows.segment(handle, place).forEach(samples::add);
      }
    }
    if (first >= 0) {
      rows.deleteFrom(handle, first);
      rows.insertLong(handle, first, samples);
    }
  }

  private static List<TripRow> unsealed(Handle handle) {
    return handle
        .createQuery(Sql.of("selectUnsealedTrips"))
        .map((row, context) -> new TripRow(row.getString("id"), row.getLong("trip_key")))
        .list();
  }
}
