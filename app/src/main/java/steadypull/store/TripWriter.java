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

/**
 * Writes the entries of one trip inside somebody else's transaction. What it remembers of a
 * transaction becomes true with {@link #committed} and is forgotten with {@link #rolledBack}. One
 * thread.
 */
final class TripWriter {
  private static final int BATCH = 10_000;

  private final long tripKey;
  private Progress durable = new Progress(0, 0, Map.of());
  private Progress written = durable;

  TripWriter(long tripKey) {
    this.tripKey = tripKey;
  }

  /** Writes and returns how many entries that were. */
  int write(Handle handle, List<TripEntry> entries, TripTally tally, boolean sealed) {
    Map<Channel, Long> keys = writeChannels(handle, tally.channels());
    List<TripTally.GapMicros> gaps = tally.gaps();
    writeEntries(handle, entries, keys);
    writeGaps(handle, gaps.subList(written.gaps, gaps.size()));
    updateTrip(handle, tally, sealed);
    written = new Progress(written.entries + entries.size(), gaps.size(), keys);
    return entries.size();
  }

  /** Writes a whole trip and seals it, without holding it in memory. */
  void writeAll(Handle handle, Iterable<Sample> samples, long endMicros) {
    TripTally tally = new TripTally();
    List<TripEntry> batch = new ArrayList<>();
    for (Sample sample : samples) {
      TripEntry entry = new TripEntry.OfSample(sample);
      batch.add(entry);
      tally.add(entry);
      if (batch.size() == BATCH) {
        write(handle, batch, tally, false);
        batch.clear();
      }
    }
    tally.reach(endMicros);
    write(handle, batch, tally, true);
  }

  void committed() {
    durable = written;
  }

  void rolledBack() {
    written = durable;
  }

  private Map<Channel, Long> writeChannels(Handle handle, List<Channel> channels) {
    Map<Channel, Long> keys = new HashMap<>(written.channelKeys);
    for (Channel channel : channels) {
      if (!keys.containsKey(channel)) {
        long key = channelKey(handle, channel);
        handle
            .createUpdate(Sql.of("insertTripChannel"))
            .bind("tripKey", tripKey)
            .bind("channelKey", key)
            .bind("position", keys.size())
            .execute();
        keys.put(channel, key);
      }
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

  private void writeEntries(Handle handle, List<TripEntry> entries, Map<Channel, Long> keys) {
    try (PreparedBatch samples = handle.prepareBatch(Sql.of("insertSample"));
        PreparedBatch events = handle.prepareBatch(Sql.of("insertEvent"))) {
      long sequence = written.entries;
      for (TripEntry entry : entries) {
        switch (entry) {
          case TripEntry.OfSample(Sample sample) -> add(samples, sequence++, sample, keys);
          case TripEntry.OfEvent(TripEvent event) -> add(events, sequence++, event);
        }
      }
      samples.execute();
      events.execute();
    }
  }

  private void add(
      PreparedBatch samples, long sequence, Sample sample, Map<Channel, Long> channelKeys) {
    samples
        .bind("tripKey", tripKey)
        .bind("sequence", sequence)
        .bind("timeMicros", sample.timeMicros())
        .bind("channelKey", channelKeys.get(sample.channel()))
        .bind("value", sample.value())
        .add();
  }

  private void add(PreparedBatch events, long sequence, TripEvent event) {
    events
        .bind("tripKey", tripKey)
        .bind("sequence", sequence)
        .bind("timeMicros", event.timeMicros())
        .bind("kind", event.kind().word())
        .bind("detail", event.detail())
        .add();
  }

  private void writeGaps(Handle handle, List<TripTally.GapMicros> gaps) {
    for (TripTally.GapMicros gap : gaps) {
      handle
          .createUpdate(Sql.of("insertGap"))
          .bind("tripKey", tripKey)
          .bind("fromMicros", gap.fromMicros())
          .bind("toMicros", gap.toMicros())
          .execute();
    }
  }

  private void updateTrip(Handle handle, TripTally tally, boolean sealed) {
    OptionalDouble distance = tally.distanceMetres();
    handle
        .createUpdate(Sql.of("updateTrip"))
        .bind("tripKey", tripKey)
        .bind("reachedMicros", tally.reachedMicros())
        .bind("lastSampleMicros", tally.lastSampleMicros())
        .bind("sampleCount", tally.sampleCount())
        .bind("distanceMetres", distance.isPresent() ? distance.getAsDouble() : null)
        .bind("sealed", sealed ? 1 : 0)
        .execute();
  }

  private record Progress(long entries, int gaps, Map<Channel, Long> channelKeys) {}
}
