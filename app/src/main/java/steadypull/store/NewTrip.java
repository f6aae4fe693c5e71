package steadypull.store;

import java.time.Instant;
import java.util.Objects;
import steadypull.vehicle.Vehicle;

/**
 * What is known of a trip when it begins.
 *
 * @param vehicle the vehicle as it is now; the trip keeps a copy of its own
 * @param start the moment of time zero
 * @param label the user's words for the run, such as {@code baseline}; may be empty
 * @param source where the samples come from: a port or the name of a file
 * @param softwareVersion version of the program that records
 */
public record NewTrip(
    Vehicle vehicle, Instant start, String label, String source, String softwareVersion) {
  public NewTrip {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(start);
    Objects.requireNonNull(label);
    Objects.requireNonNull(source);
    Objects.requireNonNull(softwareVersion);
  }
}
