package steadypull.drive;

import java.util.List;
import java.util.function.Consumer;
import steadypull.store.TripDetails;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/**
 * What people do with kept trips. Any thread; every question may wait for the disk. Each refusal
 * says what was tried, found and what to do.
 */
public interface TripDesk {

  /** All trips, newest first. */
  List<TripSummary> all() throws DriveException;

  /** The trips that mention a text in anything that was said of them, newest first. */
  List<TripSummary> find(String text) throws DriveException;

  /** All that is told of a trip, but for its samples. */
  WholeTrip trip(String tripId) throws DriveException;

  /**
   * Says something else of a trip.
   *
   * @return the trip as it is now
   */
  WholeTrip describe(String tripId, TripDetails details, Rig rig) throws DriveException;

  /** Throws a trip away; one that is being recorded is refused. */
  void throwAway(String tripId) throws DriveException;

  /** Brings back what was thrown away. */
  void bringBack(String tripId) throws DriveException;

  /** What was thrown away here and is not gone yet, last thrown first. */
  List<TripSummary> thrownAway();

  /** Opens a trip to be looked at. */
  TripView view(String tripId) throws DriveException;

  /**
   * Writes a trip to a file, in the form that its name tells: {@code .trip}, {@code .gpx}, else a
   * table. Works on the calling thread.
   */
  ExportEnd export(String tripId, ExportTarget target, ExportWatch watch) throws DriveException;

  /**
   * Drives a trip once more on its own clock and ten times as fast. Nothing is recorded; the
   * answers that were given then are given again.
   *
   * @param onSnapshot takes every snapshot, on the replay's own thread
   */
  DriveSession playBack(String tripId, Consumer<DriveSnapshot> onSnapshot) throws DriveException;
}
