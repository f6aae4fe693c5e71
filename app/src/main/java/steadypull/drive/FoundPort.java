package steadypull.drive;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.link.LinkSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/**
 * An address that was recognised. Immutable.
 *
 * @param source opens it
 * @param offer the offer that it belongs to, if it is not a port of this machine
 */
record FoundPort(LinkSource source, Optional<LinkOffer> offer) {

  /** How long it has something to tell, on its link's clock; empty if it does not end. */
  Optional<Duration> lasts() {
    return offer.flatMap(each -> each.lasts().apply(source.address()));
  }

  /** The vehicle that comes with a simulated port. */
  Optional<Vehicle> ownVehicle() throws VehicleFileException {
    Optional<String> file = offer.flatMap(each -> each.vehicleFile().apply(source.address()));
    return file.isEmpty()
        ? Optional.empty()
        : Optional.of(VehicleJson.read(file.get(), source.address()));
  }

  /**
   * The name of the vehicle that comes with a simulated port.
   *
   * @throws DriveException if its vehicle file cannot be read
   */
  Optional<String> ownName() throws DriveException {
    try {
      return ownVehicle().map(Vehicle::name);
    } catch (VehicleFileException broken) {
      throw new DriveException(FaultText.of(broken), broken);
    }
  }
}
