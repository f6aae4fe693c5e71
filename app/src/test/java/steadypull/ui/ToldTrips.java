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
import steadypull.drive.TripPicture;
import steadypull.drive.TripView;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripDetails;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/**
 * The trips of a real library, of which some damage is told that is not there, and exports that end
 * as they are told to without writing anything.
 */
record ToldTrips(TripDesk real, TripDamage damage, ExportEnd end) implements TripDesk {
  @Override
  public List<TripSummary> all() throws DriveException {
    return real.all();
  }

  @Override
  public List<TripSummary> find(String text) throws DriveException {
    return real.find(text);
  }

  @Override
  public WholeTrip trip(String tripId) throws DriveException {
    return real.trip(tripId);
  }

  @Override
  public WholeTrip describe(String tripId, TripDetails details, Rig rig) throws DriveException {
    return real.describe(tripId, details, rig);
  }

  @Override
  public void throwAway(String tripId) throws DriveException {
    real.throwAway(tripId);
  }

  @Override
  public void bringBack(String tripId) throws DriveException {
    real.bringBack(tripId);
  }

  @Override
  public List<TripSummary> thrownAway() {
    return real.thrownAway();
  }

  @Override
  public TripView view(String tripId) throws DriveException {
    return new ToldView(real.view(tripId), damage);
  }

  @Override
  public ExportEnd export(String tripId, ExportTarget target, ExportWatch watch) {
    return end;
  }

  @Override
  public DriveSession playBack(String tripId, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    return real.playBack(tripId, onSnapshot);
  }

  private record ToldView(TripView real, TripDamage damage) implements TripView {
    @Override
    public WholeTrip trip() {
      return real.trip();
    }

    @Override
    public TripPicture picture(TripWindow window, int pixelColumns) throws DriveException {
      return real.picture(window, pixelColumns);
    }

    @Override
    public TripPicture known(TripWindow window, int pixelColumns) throws DriveException {
      return real.known(window, pixelColumns);
    }

    @Override
    public boolean readAhead(TripWindow window) throws DriveException {
      return real.readAhead(window);
    }

    @Override
    public boolean examine() throws DriveException {
      return real.examine();
    }

    @Override
    public void close() {
      real.close();
    }
  }
}
