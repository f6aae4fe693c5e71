package steadypull.ui;

import java.util.List;
import java.util.function.Consumer;
import steadypull.drive.DriveException;
import steadypull.drive.DriveSession;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.ExportEnd;
import steadypull.drive.ExportTarget;
import steadypull.drive.ExportWatch;
import steadypull.drive.TripDesk;
import steadypull.drive.TripView;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/** A desk without a single trip. */
final class QuietTrips implements TripDesk {
  @Override
  public List<TripSummary> all() {
    return List.of();
  }

  @Override
  public List<TripSummary> find(String text) {
    return List.of();
  }

  @Override
  public WholeTrip trip(String tripId) throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public WholeTrip describe(String tripId, TripDetails details, Rig rig) throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public void throwAway(String tripId) throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public void bringBack(String tripId) throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public List<TripSummary> thrownAway() {
    return List.of();
  }

  @Override
  public TripView view(String tripId) throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public ExportEnd export(String tripId, ExportTarget target, ExportWatch watch)
      throws DriveException {
    throw unknown(tripId);
  }

  @Override
  public DriveSession playBack(String tripId, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    throw unknown(tripId);
  }

  private static DriveException unknown(String tripId) {
    return new DriveException("There is no trip " + tripId, null);
  }
}
