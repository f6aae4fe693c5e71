package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.channel.Channel;
import steadypull.store.column.SegmentState;

/** Adds up what of a trip cannot be read, segment by segment in their order. One pass. */
final class DamageTally {
  private final String tripId;
  private final List<Channel> channels;
  private final List<LostPart> lost = new ArrayList<>();
  private long sampleNumber;
  private long reachedMicros;

  /** Nothing yet of a trip with those channels, in its order. */
  DamageTally(String tripId, List<Channel> channels) {
    this.tripId = tripId;
    this.channels = channels;
  }

  /** Whether a segment follows those before; what begins earlier has a row that is damaged. */
  boolean follows(SegmentRows.Place place) {
    return place.firstSample() >= sampleNumber;
  }

  /**
   * Adds a segment.
   *
   * @param state what could be read of it; empty if nothing could
   */
  void add(SegmentRows.Place place, Optional<SegmentState> state) {
    if (follows(place)) {
      skipTo(place.firstSample(), place.firstMicros());
      state.filter(read -> read.samples() == place.sampleCount()).ifPresent(this::add);
    }
  }

  private void add(SegmentState state) {
    sampleNumber += state.samples();
    reachedMicros = state.lastMicros();
    if (!state.lost().isEmpty()) {
      lost.add(LostPart.of(tripId, state.lost(), this::channel));
    }
  }

  private Channel channel(int number) {
    if (number >= channels.size()) {
      throw new DamagedTripException(
          "expected one of %d channels, found number %d".formatted(channels.size(), number));
    }
    return channels.get(number);
  }

  /** Segments that cannot be read: neighbours say how many samples and from when to when. */
  private void skipTo(long firstSample, long firstMicros) {
    if (firstSample > sampleNumber) {
      lost.add(LostPart.piece(tripId, reachedMicros, firstMicros, firstSample - sampleNumber));
      sampleNumber = firstSample;
    }
  }

  /** To where the trip's own row says that it reaches. */
  void skipToTheEnd(Handle handle, TripRow trip) {
    handle
        .createQuery(Sql.of("selectTripReach"))
        .bind("tripKey", trip.key())
        .map(
            (row, context) ->
                new long[] {row.getLong("sample_count"), row.getLong("last_sample_micros")})
        .findOne()
        .ifPresent(reach -> skipTo(reach[0], reach[1]));
  }

  /** What cannot be read, once every segment was added. */
  TripDamage damage(boolean areEventsLost) {
    return new TripDamage(tripId, lost, areEventsLost);
  }
}
