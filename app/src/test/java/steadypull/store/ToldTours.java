package steadypull.store;

import java.time.Instant;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;

/** Tours through the invented country as trips of a library, one a day. */
public final class ToldTours {
  private static final Instant FIRST = Instant.parse("2026-07-01T08:00:00Z");
  private static final long A_DAY_SECONDS = 86_400;

  private ToldTours() {}

  /**
   * Keeps a tour as a trip that has ended.
   *
   * @param seed of mass, weather and speed; the number of the day too
   * @return the trip's id
   */
  public static String keep(TripLibrary library, Tour tour, long seed) throws LibraryException {
    return keep(library, TourDrive.of(tour, seed), seed);
  }

  /** The same with a drive that is there already. */
  public static String keep(TripLibrary library, TourDrive drive, long day)
      throws LibraryException {
    NewTrip trip =
        new NewTrip(drive.vehicle(), FIRST.plusSeconds(day * A_DAY_SECONDS), "", "test", "0.1.0");
    return library.keep(trip, drive.samples(), drive.samples().getLast().timeMicros());
  }

  /** Learns from all trips that wait; says how many passes. */
  public static int learn(TripLibrary library) throws LibraryException {
    int passes = 0;
    for (var learned = library.roads().learnNext();
        learned.isPresent();
        learned = library.roads().learnNext()) {
      passes += learned.get().passes();
    }
    return passes;
  }
}
