package steadypull.cli;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import steadypull.drive.DriveDesk;
import steadypull.drive.DriveException;
import steadypull.drive.DriveSession;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PortChoice;
import steadypull.drive.TripDesk;
import steadypull.drive.VehicleSensors;
import steadypull.store.Backup;
import steadypull.vehicle.role.RoleFinding;

/**
 * Passes everything on to a desk, and ends whatever drive it opened when the program is shut down:
 * a window whose program ends leaves no trip unsealed. Any thread.
 */
final class SealingDesk implements DriveDesk, AutoCloseable {
  private final DriveDesk desk;
  private final Set<DriveSession> opened = ConcurrentHashMap.newKeySet();
  private final Thread hook = new Thread(this::endAll, "seal");

  SealingDesk(DriveDesk desk) {
    this.desk = desk;
    Runtime.getRuntime().addShutdownHook(hook);
  }

  @Override
  public DriveSession open(String address, String vehicleName, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    DriveSession session = desk.open(address, vehicleName, onSnapshot);
    opened.add(session);
    return session;
  }

  /** Closing a session twice is harmless; those that ended earlier are few. */
  private void endAll() {
    opened.forEach(DriveSession::close);
  }

  @Override
  public List<PortChoice> ports() {
    return desk.ports();
  }

  @Override
  public TripDesk trips() {
    return desk.trips();
  }

  @Override
  public int leftBehind() {
    return desk.leftBehind();
  }

  @Override
  public List<String> vehicleNames() {
    return desk.vehicleNames();
  }

  @Override
  public Backup backUp() throws DriveException {
    return desk.backUp();
  }

  @Override
  public VehicleSensors sensors(String vehicleName) throws DriveException {
    return desk.sensors(vehicleName);
  }

  @Override
  public VehicleSensors confirm(String vehicleName, List<RoleFinding.Proposed> proposals)
      throws DriveException {
    return desk.confirm(vehicleName, proposals);
  }

  /** Ends what still runs. */
  @Override
  public void close() {
    endAll();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException stopping) {
      // The program is being shut down; the hook may stay.
    }
  }
}
