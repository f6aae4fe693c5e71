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

  /** Every sample since the last long segment, also those that no transaction has taken yet. */
  private final SegmentBuilder sinceLong = new SegmentBuilder();

  private final SegmentBuilder sinceCommit = new SegmentBuilder();
  private long samplesSeen;
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
    take(entries);
    long firstLong = writeSamples(handle, sealed);
    long events = writeEvents(handle, entries);
    updateTrip(handle, tally, channelKeys, sealed);
    written = new Progress(samplesSeen, events, firstLong, channelKeys);
    return entries.size();
  }

  void committed() {
    if (written.firstOfLong > durable.firstOfLong) {
      sinceLong.clear();
    }
    sinceCommit.clear();
    durable = written;
  }

  void rolledBack() {
    written = durable;
  }

  /** Takes the samples that were not seen before: after a failure some of them were. */
  private void take(List<TripEntry> entries) {
    long number = durable.samples;
    for (TripEntry entry : entries) {
      if (entry instanceof TripEntry.OfSample(Sample sample) && number++ >= samplesSeen) {
        int channel = channelNumber(sample.channel());
        sinceLong.add(channel, sample.timeMicros(), sample.value());
        sinceCommit.add(channel, sample.timeMicros(), sample.value());
        samplesSeen++;
      }
    }
  }

  private int channelNumber(Channel channel) {
    Integer number = channelNumbers.get(channel);
    if (number == null) {
      throw new IllegalStateException("The channel " + channel + " was not counted");
    }
    return number;
  }

  /** Returns the number of the first sample that lies in no long segment afterwards. */
  private long writeSamples(Handle handle, boolean sealed) {
    if (sinceLong.size() >= LONG_SEGMENT || (sealed && sinceLong.size() > 0)) {
      rows.deleteFrom(handle, durable.firstOfLong);
      rows.insertLong(handle, durable.firstOfLong, sinceLong);
      return samplesSeen;
    }
    if (sinceCommit.size() > 0) {
      rows.insert(handle, durable.samples, sinceCommit);
    }
    return durable.firstOfLong;
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
