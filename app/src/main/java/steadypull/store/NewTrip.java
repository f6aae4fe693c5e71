package steadypull.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.Optional;
import steadypull.vehicle.Vehicle;

/**
 * What is known of a trip when it begins.
 *
 * @param vehicle the vehicle and what it tows as it is now; the trip keeps a copy of its own
 * @param start the moment of time zero
 * @param offset of the local time from UTC at the start; empty: nobody knows
 * @param details what people say of it
 * @param source where the samples come from: a port or the name of a file
 * @param softwareVersion version of the program that records
 */
public record NewTrip(
    Vehicle vehicle,
    Instant start,
    Optional<ZoneOffset> offset,
    TripDetails details,
    String source,
    String softwareVersion) {
  public NewTrip {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(start);
    Objects.requireNonNull(offset);
    Objects.requireNonNull(details);
    Objects.requireNonNull(source);
    Objects.requireNonNull(softwareVersion);
  }

  /** A trip of which only the run label is said. */
  public NewTrip(
      Vehicle vehicle, Instant start, String label, String source, String softwareVersion) {
    this(vehicle, start, Optional.empty(), TripDetails.ofLabel(label), source, softwareVersion);
  }
}
