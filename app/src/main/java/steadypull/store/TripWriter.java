package steadypull.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.column.SegmentBuilder;

/**
 * Writes the entries of one trip inside somebody else's transaction: each time a short segment, and
 * after {@link #LONG_SEGMENT} samples one long segment in place of the short ones. What it
 * remembers of a transaction becomes true with {@link #committed} and is forgotten with {@link
 * #rolledBack}. One thread.
 */
final class TripWriter {
  /** Some ten minutes of driving; long enough to compress well, short enough to open at once. */
  static final int LONG_SEGMENT = 32_768;

  private final SegmentRows rows;
  private final long tripKey;
  private final Map<Channel, Integer> channelNumbers = new HashMap<>();

  /** The samples since the last long segment that are durable; always fewer than a long one's. */
  private final SegmentBuilder tail = new SegmentBuilder();

  /** What the transaction under way adds to the tail, or puts in its place. */
  private final SegmentBuilder fresh = new SegmentBuilder();

  private boolean isTailReplaced;
  private Progress durable = new Progress(0, 0, 0, List.of());
  private Progress written = durable;

  TripWriter(long tripKey) {
    this.tripKey = tripKey;
    this.rows = new SegmentRows(tripKey);
  }

  /**
   * Writes.
   *
   * @param entries everything since the last transaction that was committed
   * @return how many entries that were
   */
  int write(Handle handle, List<TripEntry> entries, TripTally tally, boolean sealed) {
    List<Long> channelKeys = channelKeys(handle, tally.channels());
    List<Sample> samples = samples(entries);
    long firstOfLong = writeSamples(handle, samples, sealed);
    long events = writeEvents(handle, entries);
    updateTrip(handle, tally, channelKeys, sealed);
    written = new Progress(durable.samples + samples.size(), events, firstOfLong, channelKeys);
    return entries.size();
  }

  void committed() {
    if (isTailReplaced) {
      tail.clear();
    }
    fresh.forEach(tail::add);
    durable = written;
  }

  void rolledBack() {
    written = durable;
  }

  private static List<Sample> samples(List<TripEntry> entries) {
    return entries.stream()
        .filter(TripEntry.OfSample.class::isInstance)
        .map(entry -> ((TripEntry.OfSample) entry).sample())
        .toList();
  }

  private int channelNumber(Channel channel) {
    Integer number = channelNumbers.get(channel);
    if (number == null) {
      throw new IllegalStateException("The channel " + channel + " was not counted");
    }
    return number;
  }

  /** Returns the number of the first sample that lies in no long segment afterwards. */
  private long writeSamples(Handle handle, List<Sample> samples, boolean sealed) {
    fresh.clear();
    isTailReplaced = sealed || tail.size() + samples.size() >= LONG_SEGMENT;
    if (isTailReplaced) {
      return writeLong(handle, samples, sealed);
    }
    samples.forEach(this::addFresh);
    writeFresh(handle, durable.samples, false);
    return durable.firstOfLong;
  }

  /** However many samples have waited, for a disk that was full perhaps: no segment is longer. */
  private long writeLong(Handle handle, List<Sample> samples, boolean sealed) {
    rows.deleteFrom(handle, durable.firstOfLong);
    long first = durable.firstOfLong;
    tail.forEach(fresh::add);
    for (Sample sample : samples) {
      addFresh(sample);
      if (fresh.size() == LONG_SEGMENT) {
        writeFresh(handle, first, true);
        first += fresh.size();
        fresh.clear();
      }
    }
    writeFresh(handle, first, sealed);
    return sealed ? first + fresh.size() : first;
  }

  private void addFresh(Sample sample) {
    fresh.add(channelNumber(sample.channel()), sample.timeMicros(), sample.value());
  }

  private void writeFresh(Handle handle, long first, boolean isLong) {
    if (fresh.size() == 0) {
      return;
    }
    if (isLong) {
      rows.insertLong(handle, first, fresh);
    } else {
      rows.insert(handle, first, fresh);
    }
  }

  private List<Long> channelKeys(Handle handle, List<Channel> channels) {
    List<Long> keys = new ArrayList<>(durable.channelKeys);
    for (Channel channel : channels.subList(keys.size(), channels.size())) {
      channelNumbers.put(channel, keys.size());
      keys.add(channelKey(handle, channel));
    }
    return keys;
  }

  private static long channelKey(Handle handle, Channel channel) {
    handle
        .createUpdate(Sql.of("insertChannel"))
        .bind("id", channel.id())
        .bind("unit", channel.unit())
        .execute();
    return handle
        .createQuery(Sql.of("selectChannelKey"))
        .bind("id", channel.id())
        .bind("unit", channel.unit())
        .mapTo(Long.class)
        .one();
  }

  /** Returns the number of events of the trip so far. */
  private long writeEvents(Handle handle, List<TripEntry> entries) {
    long samples = durable.samples;
    long sequence = durable.events;
    try (PreparedBatch events = handle.prepareBatch(Sql.of("insertEvent"))) {
      for (TripEntry entry : entries) {
        switch (entry) {
          case TripEntry.OfSample _ -> samples++;
          case TripEntry.OfEvent(TripEvent event) -> add(events, sequence++, samples, event);
        }
      }
      events.execute();
    }
    return sequence;
  }

  private void add(PreparedBatch events, long sequence, long afterSamples, TripEvent event) {
    events
        .bind("tripKey", tripKey)
        .bind("sequence", sequence)
        .bind("afterSamples", afterSamples)
        .bind("timeMicros", event.timeMicros())
        .bind("kind", event.kind().word())
        .bind("detail", event.detail())
        .add();
  }

  private void updateTrip(Handle handle, TripTally tally, List<Long> channelKeys, boolean sealed) {
    OptionalDouble distance = tally.distanceMetres();
    handle
        .createUpdate(Sql.of("updateTrip"))
        .bind("tripKey", tripKey)
        .bind("reachedMicros", tally.reachedMicros())
        .bind("lastSampleMicros", tally.lastSampleMicros())
        .bind("sampleCount", tally.sampleCount())
        .bind("distanceMetres", distance.isPresent() ? distance.getAsDouble() : null)
        .bind("channelKeys", RowText.ofKeys(channelKeys))
        .bind("gaps", RowText.ofGaps(tally.gaps()))
        .bind("sealed", sealed ? 1 : 0)
        .execute();
    if (sealed) {
      TripRow.tellTwice(handle, tripKey);
    }
  }

  /**
   * How far the trip has come in the library.
   *
   * @param firstOfLong number of the first sample that lies in no long segment
   */
  private record Progress(long samples, long events, long firstOfLong, List<Long> channelKeys) {}
}
