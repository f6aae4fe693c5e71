package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.TripSummary.Gap;
import steadypull.store.column.KnownLine;
import steadypull.store.column.PixelLine;
import steadypull.store.column.SegmentSource;
import steadypull.store.column.TripLines;

/**
 * What to draw of a trip as it was when it was asked for: of a trip that is being recorded ask anew
 * from time to time. Keeps what it unpacked, so that another window costs little. One thread.
 */
public final class TripDrawing implements AutoCloseable {
  private final TripRow trip;
  private final LibraryConnection connection;
  private final Handle handle;
  private final List<SegmentRows.Place> places;
  private final TripLines lines;

  TripDrawing(LibraryConnection connection, TripRow trip, Handle handle) {
    this.trip = trip;
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
    return ask(() -> lines.line(channel, fromMicros, toMicros, pixelColumns));
  }

  /**
   * What is known of a line without unpacking any samples: for the moment that {@link #line} takes.
   * Quick once the whole trip has been drawn.
   */
  public KnownLine known(int channel, long fromMicros, long toMicros, int pixelColumns)
      throws LibraryException {
    return ask(() -> lines.known(channel, fromMicros, toMicros, pixelColumns));
  }

  /**
   * Takes one step of having the samples in a window and around it unpacked on other threads, as
   * far as memory allows, so that drawing them waits for nothing. To be asked for again and again
   * once the whole trip has been drawn; takes a few milliseconds for reading.
   *
   * @return whether a further step would read more
   */
  public boolean readAhead(long fromMicros, long toMicros) throws LibraryException {
    return ask(() -> lines.readAhead(fromMicros, toMicros));
  }

  /**
   * Takes one step of finding out what of the trip cannot be read; what was unpacked for drawing is
   * not read once more.
   *
   * @return whether {@link #damage} does not know all yet
   */
  public boolean examine() throws LibraryException {
    return ask(lines::examine);
  }

  /** What cannot be read: all of it once {@link #examine} has nothing more to find out. */
  public TripDamage damage() throws LibraryException {
    return ask(
        () -> {
          DamageTally tally = new DamageTally(trip.id(), TripList.channels(handle, trip.id()));
          for (int number = 0; number < places.size(); number++) {
            tally.add(places.get(number), lines.state(number));
          }
          tally.skipToTheEnd(handle, trip);
          return tally.damage(TripEntries.areEventsLost(handle, trip));
        });
  }

  private <T> T ask(Supplier<T> question) throws LibraryException {
    try {
      return question.get();
    } catch (JdbiException e) {
      throw LibraryFault.of("draw trip " + trip.id(), connection.file(), e);
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
    lines.leave();
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
