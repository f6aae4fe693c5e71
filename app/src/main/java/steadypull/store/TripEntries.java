package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.column.Segment;

/**
 * The entries of one trip in the order in which they were accepted: samples from their segments,
 * events in between. Where the library is damaged, what lay there is left out and told. One handle,
 * one thread, one pass.
 */
final class TripEntries {
  private final TripRow trip;
  private final List<Channel> channels;
  private final Consumer<TripEntry> consumer;
  private final DamageTally tally;
  private Iterator<PlacedEvent> events = Collections.emptyIterator();
  private boolean areEventsLost;
  private @Nullable PlacedEvent nextEvent;
  private long sampleNumber;

  private TripEntries(TripRow trip, List<Channel> channels, Consumer<TripEntry> consumer) {
    this.trip = trip;
    this.channels = channels;
    this.consumer = consumer;
    this.tally = new DamageTally(trip.id(), channels);
  }

  /**
   * Hands over every entry that can be read.
   *
   * @param channels of the trip, in its order
   * @return what cannot be read
   */
  static TripDamage replay(
      Handle handle, TripRow trip, List<Channel> channels, Consumer<TripEntry> consumer) {
    TripEntries entries = new TripEntries(trip, channels, consumer);
    entries.replay(handle);
    return entries.tally.damage(entries.areEventsLost);
  }

  /** The events alone, in their order, as far as they can be read. */
  static List<TripEvent> eventsOf(Handle handle, TripRow trip) {
    TripEntries entries = new TripEntries(trip, List.of(), _ -> {});
    return entries.events(handle).stream().flatMap(event -> event.event.stream()).toList();
  }

  /** Whether events cannot be read. */
  static boolean areEventsLost(Handle handle, TripRow trip) {
    TripEntries entries = new TripEntries(trip, List.of(), _ -> {});
    entries.events(handle);
    return entries.areEventsLost;
  }

  private void replay(Handle handle) {
    events = events(handle).iterator();
    nextEvent = events.hasNext() ? events.next() : null;
    SegmentRows rows = new SegmentRows(trip.key());
    for (SegmentRows.Place place : rows.readablePlaces(handle)) {
      if (tally.follows(place)) {
        Optional<Segment> segment = rows.readableSegment(handle, place);
        sampleNumber = place.firstSample();
        segment.ifPresent(this::hand);
        tally.add(place, segment.map(Segment::state));
      }
    }
    tally.skipToTheEnd(handle, trip);
    handEventsUpTo(Long.MAX_VALUE);
  }

  private void hand(Segment segment) {
    segment.forEach(
        this::hand,
        () -> {
          handEventsUpTo(sampleNumber);
          sampleNumber++;
        });
  }

  private void hand(int channel, long timeMicros, double value) {
    handEventsUpTo(sampleNumber);
    consumer.accept(new TripEntry.OfSample(new Sample(channel(channel), timeMicros, value)));
    sampleNumber++;
  }

  private Channel channel(int number) {
    if (number >= channels.size()) {
      throw new DamagedTripException(
          "expected one of %d channels, found number %d".formatted(channels.size(), number));
    }
    return channels.get(number);
  }

  private void handEventsUpTo(long samples) {
    for (PlacedEvent event = nextEvent;
        event != null && event.afterSamples <= samples;
        event = nextEvent) {
      nextEvent = events.hasNext() ? events.next() : null;
      event.event.ifPresent(known -> consumer.accept(new TripEntry.OfEvent(known)));
    }
  }

  private List<PlacedEvent> events(Handle handle) {
    ReadableRows rows = new ReadableRows(handle, trip.key());
    SortedMap<Long, PlacedEvent> found = new TreeMap<>();
    rows.upToDamage("selectEvents", TripEntries::event)
        .forEach(event -> found.put(event.sequence, event));
    areEventsLost = rows.isCutOff();
    if (rows.isCutOff()) {
      rows.upToDamage("selectEventsFromEnd", TripEntries::event)
          .forEach(event -> found.put(event.sequence, event));
    }
    areEventsLost |= found.values().stream().anyMatch(event -> event.event.isEmpty());
    return List.copyOf(found.values());
  }

  private static PlacedEvent event(ResultSet row) throws SQLException {
    long timeMicros = row.getLong("time_micros");
    String detail = row.getString("detail");
    return new PlacedEvent(
        row.getLong("sequence"),
        row.getLong("after_samples"),
        TripEvent.Kind.of(row.getString("kind"))
            .map(kind -> new TripEvent(timeMicros, kind, detail)));
  }

  /** An event, empty if nobody knows such a kind. */
  private record PlacedEvent(long sequence, long afterSamples, Optional<TripEvent> event) {}
}
