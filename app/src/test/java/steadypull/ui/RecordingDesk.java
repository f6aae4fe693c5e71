package steadypull.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveDesk;
import steadypull.drive.DriveException;
import steadypull.drive.DriveSession;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PortChoice;
import steadypull.drive.TripDesk;
import steadypull.drive.VehicleSensors;
import steadypull.store.Backup;
import steadypull.vehicle.role.RoleFinding;

/** A desk that writes down what is asked of it. */
final class RecordingDesk implements DriveDesk {
  static final PortChoice REAL = new PortChoice("/dev/ttyS9", "Serial port 9", "", false);
  static final PortChoice SIMULATED =
      new PortChoice("demo:long-hot-grade", "Long hot grade", "an invented tow", true);

  final List<String> calls = new ArrayList<>();
  final List<UnitSystem> spoken = new ArrayList<>();
  List<String> vehicles = List.of("Wattle 2", "Quarry tipper");
  List<PortChoice> offered = List.of(REAL, SIMULATED);
  String refusal = "";
  TripDesk trips = new QuietTrips();
  VehicleSensors sensors = SensorMoments.told();
  Consumer<DriveSnapshot> onSnapshot = _ -> {};

  @Override
  public List<PortChoice> ports() {
    return offered;
  }

  @Override
  public TripDesk trips() {
    return trips;
  }

  @Override
  public int leftBehind() {
    return 0;
  }

  @Override
  public List<String> vehicleNames() {
    return vehicles;
  }

  @Override
  public Backup backUp() throws DriveException {
    calls.add("back up");
    return answer(new Backup(Path.of("library", "backups", "a.backup"), 4096, 3, 12));
  }

  @Override
  public VehicleSensors sensors(String vehicle) throws DriveException {
    calls.add("sensors of " + vehicle);
    return answer(sensors);
  }

  @Override
  public VehicleSensors confirm(String vehicle, List<RoleFinding.Proposed> proposals)
      throws DriveException {
    for (RoleFinding.Proposed proposed : proposals) {
      calls.add("confirm %s %s".formatted(proposed.channel().id(), proposed.signalKey()));
    }
    sensors = answer(sensors.confirming(proposals));
    return sensors;
  }

  private <T> T answer(T found) throws DriveException {
    if (!refusal.isEmpty()) {
      throw new DriveException(refusal, null);
    }
    return found;
  }

  @Override
  public DriveSession open(String address, String vehicle, Consumer<DriveSnapshot> taker)
      throws DriveException {
    calls.add("open " + address + " with " + vehicle);
    if (!refusal.isEmpty()) {
      throw new DriveException(refusal, null);
    }
    onSnapshot = taker;
    return new Session();
  }

  private final class Session implements DriveSession {
    @Override
    public void mark() {
      calls.add("mark");
    }

    @Override
    public void acknowledge() {
      calls.add("acknowledge");
    }

    @Override
    public void snooze() {
      calls.add("snooze");
    }

    @Override
    public void show() {
      calls.add("show");
    }

    @Override
    public void speakIn(UnitSystem units) {
      spoken.add(units);
    }

    @Override
    public void close() {
      calls.add("close");
    }
  }
}
