package steadypull.drive;

import java.util.List;
import java.util.function.Consumer;
import steadypull.store.Backup;
import steadypull.vehicle.role.RoleFinding;

/** Where a drive begins: what can be opened, by whom, and the opening itself. Any thread. */
public interface DriveDesk {

  /** Ports found on this machine and simulated ones, the likeliest for an adapter first. */
  List<PortChoice> ports();

  /** Names of the vehicles in the library, last used first. */
  List<String> vehicleNames();

  /**
   * What the drives of a vehicle have shown of where its sensors sit.
   *
   * @throws DriveException if the library does not know the vehicle or cannot be read
   */
  VehicleSensors sensors(String vehicleName) throws DriveException;

  /**
   * Confirms sensor roles; they hold from the next drive on.
   *
   * @return the vehicle as it is now
   * @throws DriveException if the library does not know the vehicle or cannot be written
   */
  VehicleSensors confirm(String vehicleName, List<RoleFinding.Proposed> proposals)
      throws DriveException;

  /** What can be done with the trips that are kept. */
  TripDesk trips();

  /** How many trips a crash had left behind; they were brought to their end. */
  int leftBehind();

  /**
   * Copies the library into a dated file beside it, also while a drive is recorded. Works on the
   * calling thread.
   *
   * @throws DriveException if the library cannot be read or the copy not be written
   */
  Backup backUp() throws DriveException;

  /**
   * Opens a port and begins a trip. Returns at once; what happens comes as snapshots.
   *
   * @param address what to open, see {@link PortChoice}
   * @param vehicleName name of the vehicle; one that the library does not know is created with
   *     cautious default limits. A simulated drive is always its own vehicle's
   * @param onSnapshot takes every snapshot, on the pipeline's thread
   * @throws DriveException if the address is malformed or the library cannot be written
   */
  DriveSession open(String address, String vehicleName, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException;
}
