package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import steadypull.channel.Sample;

/**
 * A trip that is added from elsewhere, entry after entry, without being held in memory. It is kept
 * with its {@link #seal}. One thread.
 */
public final class AddedTrip {
  private final Handle handle;
  private final TripRow trip;
  private final TripWriter writer;
  private final TripTally tally = new TripTally();
  private final List<TripEntry> batch = new ArrayList<>();

  AddedTrip(Handle handle, TripRow trip) {
    this.handle = handle;
    this.trip = trip;
    this.writer = new TripWriter(trip.key());
  }

  /** The id that the trip has in this library. */
  public String id() {
    return trip.id();
  }

  /** Keeps who answered on the trip, in place of what was kept before. */
  public void describe(LinkIdentity link) {
    TripRow.describe(handle, trip.key(), link);
  }

  /** Adds a sample. */
  public void append(Sample sample) {
    append(new TripEntry.OfSample(sample));
  }

  /** Adds a sample or an event; the order is kept. */
  public void append(TripEntry entry) {
    batch.add(entry);
    tally.add(entry);
    if (batch.size() == TripWriter.LONG_SEGMENT) {
      write(false);
    }
  }

  /**
   * Brings the trip to its end; nothing can be added afterwards.
   *
   * @param endMicros the end of the trip, microseconds since its start; a later entry moves it on
   * @return the id that the trip has in this library
   */
  public String seal(long endMicros) {
    tally.reach(endMicros);
    write(true);
    return trip.id();
  }

  /** How many samples it holds. */
  long samples() {
    return tally.sampleCount();
  }

  private void write(boolean sealed) {
    writer.write(handle, batch, tally, sealed);
    writer.committed();
    batch.clear();
  }
}
