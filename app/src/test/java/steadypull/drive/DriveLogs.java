package steadypull.drive;

import java.time.ZoneOffset;
import java.util.Optional;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.diagnostic.Signal;
import steadypull.adapter.link.LinkSource;
import steadypull.demo.DemoWorld;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Drive logs that are handed their arrivals by a test. */
final class DriveLogs {
  private DriveLogs() {}

  static DriveLog log(TripLibrary library, DriveEnd end, PipelineOutput observer) throws Exception {
    return log(library, DemoWorld.links().find("demo:cool-day").orElseThrow(), end, observer);
  }

  /** A log of a drive from a source that nobody opens; its clock tells whose time it is. */
  static DriveLog log(TripLibrary library, LinkSource source, DriveEnd end, PipelineOutput observer)
      throws Exception {
    Vehicle vehicle = Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR);
    library.save(vehicle);
    return new DriveLog(
        new DriveRoute(
            source,
            DemoDrives.ENGLISH.setup(vehicle, false),
            ReaderSettings.Pace.POLITE,
            end,
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        new DriveLog.Keeping(library, TripDetails.NONE, ZoneOffset.UTC, "test"),
        new TripClock(DemoDrives.START, 0),
        observer);
  }

  static Arrival heard(String key, double value, double seconds) {
    return new Arrival.Heard(new Reading("7E8", new Signal(key, key, "1"), value, at(seconds)));
  }

  static long at(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
