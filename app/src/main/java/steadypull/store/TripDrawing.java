package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.TripSummary.Gap;
import steadypull.store.column.PixelLine;
import steadypull.store.column.SegmentSource;
import steadypull.store.column.TripLines;

/**
 * What to draw of a trip as it was when it was asked for: of a trip that is being recorded ask anew
 * from time to time. Keeps what it unpacked, so that another window costs little. One thread.
 */
public final class TripDrawing implements AutoCloseable {
  private final String tripId;
  private final LibraryConnection connection;
  private final Handle handle;
  private final List<SegmentRows.Place> places;
  private final TripLines lines;

  TripDrawing(LibraryConnection connection, TripRow trip, Handle handle) {
    this.tripId = trip.id();
    this.connection = connection;
    this.handle = handle;
    SegmentRows rows = new SegmentRows(trip.key());
    this.places = rows.readablePlaces(handle);
    this.lines = new TripLines(new Rows(handle, rows, places));
  }

  /**
   * What each column of pixels shows of a channel.
   *
   * @param channel number in the summary's list of channels
   * @param fromMicros first moment of the window, microseconds since the start of the trip
   * @param toMicros the first moment after the window
   * @param pixelColumns width of the window in pixels, at least 1
   */
  public PixelLine line(int channel, long fromMicros, long toMicros, int pixelColumns)
      throws LibraryException {
    try {
      return lines.line(channel, fromMicros, toMicros, pixelColumns);
    } catch (JdbiException e) {
      throw LibraryFault.of("draw trip " + tripId, connection.file(), e);
    }
  }

  /**
   * Has the trip's samples unpacked on other threads, as far as memory allows: to be asked for once
   * the whole trip has been drawn, so that the first window does not wait for them. Takes some
   * milliseconds for reading.
   */
  public void readAhead() throws LibraryException {
    try {
      lines.readAhead();
    } catch (JdbiException e) {
      throw LibraryFault.of("draw trip " + tripId, connection.file(), e);
    }
  }

  /** The stretches that could not be drawn so far because the library is damaged there. */
  public List<Gap> damaged() {
    List<Gap> stretches = new ArrayList<>();
    lines.damaged().stream()
        .mapToObj(places::get)
        .forEach(
            place -> stretches.add(new Gap(place.firstMicros() / 1e6, place.lastMicros() / 1e6)));
    return stretches;
  }

  @Override
  public void close() {
    handle.close();
  }

  /** The segments as they lie in the library. */
  private record Rows(Handle handle, SegmentRows rows, List<SegmentRows.Place> places)
      implements SegmentSource {
    @Override
    public int count() {
      return places.size();
    }

    @Override
    public long firstMicros(int number) {
      return places.get(number).firstMicros();
    }

    @Override
    public long lastMicros(int number) {
      return places.get(number).lastMicros();
    }

    @Override
    public byte[] segment(int number) {
      return rows.readableBytes(handle, places.get(number));
    }

    @Override
    public List<byte[]> segments(int from, int to) {
      return rows.samples(handle, places.subList(from, to));
    }

    @Override
    public List<byte[]> overviews(int from, int to) {
      return rows.overviews(handle, places.subList(from, to));
    }

    @Override
    public byte[] overview(int number) {
      return rows.readableOverview(handle, places.get(number));
    }
  }
}
