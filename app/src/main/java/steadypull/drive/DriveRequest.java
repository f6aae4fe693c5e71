package steadypull.drive;

import java.util.Objects;
import java.util.Optional;
import steadypull.store.TripDetails;
import steadypull.vehicle.RigMasses;

/**
 * What somebody wants to drive.
 *
 * @param address device, {@code tcp://host:port}, or {@code demo:SCENARIO}
 * @param vehicleName name in the library; one that it does not know is created
 * @param masses what is said of the vehicle's rig from now on
 * @param details what is said of its trips at their start
 * @param pace how hard to ask
 * @param end when it ends by itself
 * @param receiver where a satellite receiver is, in the same forms; empty if there is none
 * @param rawCapture whether and where the bytes of the dialogue are kept too
 */
public record DriveRequest(
    String address,
    String vehicleName,
    RigMasses masses,
    TripDetails details,
    Pace pace,
    DriveEnd end,
    Optional<String> receiver,
    Optional<RawCapture> rawCapture) {
  public DriveRequest {
    Objects.requireNonNull(address);
    Objects.requireNonNull(vehicleName);
    Objects.requireNonNull(masses);
    Objects.requireNonNull(details);
    Objects.requireNonNull(pace);
    Objects.requireNonNull(end);
    Objects.requireNonNull(receiver);
    Objects.requireNonNull(rawCapture);
  }

  /**
   * A drive without a satellite receiver and a raw capture, of which nothing but a label is said.
   */
  public DriveRequest(String address, String vehicleName, String label, Pace pace, DriveEnd end) {
    this(
        address,
        vehicleName,
        RigMasses.UNSAID,
        TripDetails.ofLabel(label),
        pace,
        end,
        Optional.empty(),
        Optional.empty());
  }
}
