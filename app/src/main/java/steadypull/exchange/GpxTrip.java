package steadypull.exchange;

import java.time.Instant;
import java.util.Objects;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/**
 * A trip that is to become a track.
 *
 * @param name of the track, such as the vehicle's
 * @param description what else is to be said of it; may be empty
 * @param start the moment of time zero
 * @param samples tells the trip's samples in the order in which they were accepted, as often as it
 *     is asked
 */
public record GpxTrip(
    String name, String description, Instant start, SampleSource<LibraryException> samples) {
  public GpxTrip {
    Objects.requireNonNull(name);
    Objects.requireNonNull(description);
    Objects.requireNonNull(start);
    Objects.requireNonNull(samples);
  }

  /** A trip of a library, which must stay open until the track is written. */
  public static GpxTrip of(TripLibrary library, TripSummary trip) {
    String label = trip.label().isEmpty() ? "" : ", " + trip.label();
    return new GpxTrip(
        trip.vehicleName() + label,
        "Trip " + trip.id(),
        trip.start(),
        TripSamples.held(library, trip));
  }
}
