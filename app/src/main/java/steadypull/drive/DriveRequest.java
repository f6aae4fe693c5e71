package steadypull.drive;

import java.util.Objects;
import java.util.Optional;

/**
 * What somebody wants to drive.
 *
 * @param address device, {@code tcp://host:port}, or {@code demo:SCENARIO}
 * @param vehicleName name in the library; one that it does not know is created
 * @param label run label, may be empty
 * @param pace how hard to ask
 * @param end when it ends by itself
 * @param receiver where a satellite receiver is, in the same forms; empty if there is none
 * @param rawCapture whether and where the bytes of the dialogue are kept too
 */
public record DriveRequest(
    String address,
    String vehicleName,
    String label,
    Pace pace,
    DriveEnd end,
    Optional<String> receiver,
    Optional<RawCapture> rawCapture) {
  public DriveRequest {
    Objects.requireNonNull(address);
    Objects.requireNonNull(vehicleName);
    Objects.requireNonNull(label);
    Objects.requireNonNull(pace);
    Objects.requireNonNull(end);
    Objects.requireNonNull(receiver);
    Objects.requireNonNull(rawCapture);
  }

  /** A drive without a satellite receiver and a raw capture. */
  public DriveRequest(String address, String vehicleName, String label, Pace pace, DriveEnd end) {
    this(address, vehicleName, label, pace, end, Optional.empty(), Optional.empty());
  }
}
