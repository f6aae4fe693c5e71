package steadypull.drive;

import steadypull.store.LibraryException;
import steadypull.store.TripDamage;
import steadypull.store.TripLibrary;

/**
 * One trip while somebody looks at it. Keeps what it read, so that another window costs little: at
 * most 48 MB of overviews and 64 MB of samples, the latter at most an eighth of the memory. Asked
 * on one thread, which waits for the disk; close it.
 */
public interface TripView extends AutoCloseable {
  /** A trip of a library, which stays open at least as long. */
  static TripView of(TripLibrary library, WholeTrip trip) throws LibraryException {
    return new OpenTrip(library, trip);
  }

  /** What is told of the trip, as it was when it was opened. */
  WholeTrip trip();

  /**
   * The limited channels in a window.
   *
   * @param pixelColumns width in pixels, at least 1
   */
  TripPicture picture(TripWindow window, int pixelColumns) throws DriveException;

  /**
   * What is known of that picture without reading samples, once the whole trip has been drawn: for
   * the moment that {@link #picture} takes. Where it is not exact its lines are bounds.
   */
  TripPicture known(TripWindow window, int pixelColumns) throws DriveException;

  /**
   * Takes one step of a few milliseconds so that pictures of a window and of what lies beside it
   * wait for nothing.
   *
   * @return whether there is more to do
   */
  boolean readAhead(TripWindow window) throws DriveException;

  /**
   * Takes one step of a few milliseconds to find out what of the trip cannot be read. A trip that
   * is being recorded is not looked through.
   *
   * @return whether {@link #damage} does not know all yet
   */
  boolean examine() throws DriveException;

  /** What of the trip cannot be read; all of it once {@link #examine} is through. */
  TripDamage damage() throws DriveException;

  @Override
  void close();
}
