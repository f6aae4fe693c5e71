package steadypull.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;

/**
 * Takes the entries of one trip as they come. What {@code append} has accepted is durable once
 * {@link #commit} returns; call it about once a second. A commit that fails keeps everything in
 * memory, so that a later one can succeed. One thread at a time.
 */
public final class TripRecorder implements AutoCloseable {
  /** What may wait in memory, about an hour of a busy adapter (50 MB); estimated. */
  static final int MOST_PENDING = 500_000;

  private final String tripId;
  private final long tripKey;
  private final Path file;
  private final Handle handle;
  private final TripWriter writer;
  private final RecordingLock lock;
  private final int mostPending;
  private final TripTally tally = new TripTally();
  private final List<TripEntry> pending = new ArrayList<>();
  private boolean isStuck;
  private boolean isSealed;

  TripRecorder(TripRow trip, Path file, Handle handle, RecordingLock lock, int mostPending) {
    this.tripId = trip.id();
    this.tripKey = trip.key();
    this.file = file;
    this.handle = handle;
    this.writer = new TripWriter(trip.key());
    this.lock = lock;
    this.mostPending = mostPending;
  }

  /** The id of the trip that is recorded. */
  public String tripId() {
    return tripId;
  }

  /**
   * Accepts a sample.
   *
   * @throws LibraryException if it was not accepted: commits have failed until memory was full
   */
  public void append(Sample sample) throws LibraryException {
    accept(new TripEntry.OfSample(sample));
  }

  /**
   * Accepts an event.
   *
   * @throws LibraryException if it was not accepted: commits have failed until memory was full
   */
  public void append(TripEvent event) throws LibraryException {
    accept(new TripEntry.OfEvent(event));
  }

  /** Keeps who answers on this trip, in place of what was kept before. */
  public void describe(LinkIdentity link) throws LibraryException {
    requireOpen();
    try {
      TripRow.describe(handle, tripKey, link);
    } catch (JdbiException e) {
      throw LibraryFault.of("keep who answers on trip " + tripId, file, e);
    }
  }

  /**
   * Makes durable what was accepted.
   *
   * @param timeMicros how far the trip has come, microseconds since its start
   */
  public void commit(long timeMicros) throws LibraryException {
    requireOpen();
    tally.reach(timeMicros);
    write("write the trip", false);
  }

  /**
   * Brings the trip to its end; afterwards nothing more is accepted. May be tried again if it
   * fails.
   *
   * @param endMicros the end of the trip, microseconds since its start; a later entry moves it on
   */
  public void seal(long endMicros) throws LibraryException {
    requireOpen();
    tally.reach(endMicros);
    write("seal the trip", true);
    isSealed = true;
  }

  /** Lets go of the library; what was not sealed is committed and stays unsealed. */
  @Override
  public void close() throws LibraryException {
    try (lock;
        handle) {
      if (!isSealed && !pending.isEmpty()) {
        write("write the trip", false);
      }
    }
  }

  /** Sets something on this recorder's own connection. */
  void pragma(String pragma) {
    handle.execute("pragma " + pragma);
  }

  private void accept(TripEntry entry) throws LibraryException {
    requireOpen();
    if (pending.size() >= mostPending) {
      makeRoom();
    }
    pending.add(entry);
    tally.add(entry);
  }

  /** Once stuck only a commit tries again, so that a full disk does not cost a try per sample. */
  private void makeRoom() throws LibraryException {
    if (isStuck) {
      throw new LibraryException(
          Reason.MEMORY_FULL,
          "Could not record more of trip %s: expected the library %s to take what was recorded, found %d entries waiting. Free some room on the disk; what waits is kept."
              .formatted(tripId, file, pending.size()));
    }
    write("write the trip", false);
  }

  private void write(String tried, boolean sealed) throws LibraryException {
    try {
      Transaction.write(handle, transaction -> writer.write(transaction, pending, tally, sealed));
    } catch (JdbiException e) {
      isStuck = true;
      writer.rolledBack();
      throw LibraryFault.of(tried, file, e);
    }
    writer.committed();
    isStuck = false;
    pending.clear();
  }

  private void requireOpen() {
    if (isSealed) {
      throw new IllegalStateException("Trip " + tripId + " is sealed and takes nothing more");
    }
  }
}
