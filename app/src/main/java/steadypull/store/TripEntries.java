package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * The entries of one trip in the order in which they were accepted: samples from their segments,
 * events in between. One handle, one thread, one pass.
 */
final class TripEntries {
  private final List<Channel> channels;
  private final Consumer<TripEntry> consumer;
  private final Iterator<PlacedEvent> events;
  private @Nullable PlacedEvent nextEvent;
  private long sampleNumber;

  private TripEntries(
      List<Channel> channels, Consumer<TripEntry> consumer, Iterator<PlacedEvent> events) {
    this.channels = channels;
    this.consumer = consumer;
    this.events = events;
    this.nextEvent = events.hasNext() ? events.next() : null;
  }

  /**
   * Hands over every entry.
   *
   * @param channels of the trip, in its order
   */
  static void replay(
      Handle handle, long tripKey, List<Channel> channels, Consumer<TripEntry> consumer) {
    SegmentRows rows = new SegmentRows(tripKey);
    TripEntries entries = new TripEntries(channels, consumer, events(handle, tripKey).iterator());
    for (SegmentRows.Place place : rows.places(handle)) {
      if (place.firstSample() != entries.sampleNumber) {
        throw new DamagedTripException(
            "expected sample %d next, found %d"
                .formatted(entries.sampleNumber, place.firstSample()));
      }
      rows.segment(handle, place).forEach(entries::hand);
    }
    entries.handEventsUpTo(Long.MAX_VALUE);
  }

  /** The events alone, in their order. */
  static List<TripEvent> eventsOf(Handle handle, long tripKey) {
    return events(handle, tripKey).stream().map(PlacedEvent::event).toList();
  }

  private void hand(int channel, long timeMicros, double value) {
    handEventsUpTo(sampleNumber);
    if (channel >= channels.size()) {
      throw new DamagedTripException(
          "expected one of %d channels, found number %d".formatted(channels.size(), channel));
    }
    consumer.accept(new TripEntry.OfSample(new Sample(channels.get(channel), timeMicros, value)));
    sampleNumber++;
  }

  private void handEventsUpTo(long samples) {
    for (PlacedEvent event = nextEvent;
        event != null && event.afterSamples <= samples;
        event = nextEvent) {
      nextEvent = events.hasNext() ? events.next() : null;
      consumer.accept(new TripEntry.OfEvent(event.event));
    }
  }

  private static List<PlacedEvent> events(Handle handle, long tripKey) {
    return handle
        .createQuery(Sql.of("selectEvents"))
        .bind("tripKey", tripKey)
        .map((row, context) -> event(row))
        .list();
  }

  private static PlacedEvent event(ResultSet row) throws SQLException {
    String word = row.getString("kind");
    TripEvent.Kind kind =
        TripEvent.Kind.of(word)
            .orElseThrow(
                () ->
                    new DamagedTripException(
                        "expected a known kind of event, found \"" + word + "\""));
    return new PlacedEvent(
        row.getLong("after_samples"),
        new TripEvent(row.getLong("time_micros"), kind, row.getString("detail")));
  }

  private record PlacedEvent(long afterSamples, TripEvent event) {}
}
