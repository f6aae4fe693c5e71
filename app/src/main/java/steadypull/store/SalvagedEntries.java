package steadypull.store;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.column.LostSamples;
import steadypull.store.column.Segment;

/**
 * Adds the samples and events of a salvaged trip in the order in which they were accepted, and an
 * event where samples are missing. One thread, one pass.
 */
final class SalvagedEntries {
  private final String tripId;
  private final AddedTrip added;
  private final List<Channel> channels;
  private final Iterator<LibraryRow.OfEvent> events;
  private final Iterator<KeptSegments.Hole> holes;
  private LibraryRow.@Nullable OfEvent nextEvent;
  private KeptSegments.@Nullable Hole nextHole;
  private long sampleNumber;

  /**
   * Begins.
   *
   * @param tripId of the trip that is damaged
   * @param channels of the trip, in its order
   * @param events in their order
   * @param holes ascending
   */
  SalvagedEntries(
      String tripId,
      AddedTrip added,
      List<Channel> channels,
      List<LibraryRow.OfEvent> events,
      List<KeptSegments.Hole> holes) {
    this.tripId = tripId;
    this.added = added;
    this.channels = List.copyOf(channels);
    this.events = events.iterator();
    this.holes = holes.iterator();
    this.nextEvent = next(this.events);
    this.nextHole = next(this.holes);
  }

  /** Adds a segment, and what comes before it. */
  void addSegment(long firstSample, Segment segment) {
    sampleNumber = firstSample;
    segment.forEach(this::add, () -> addUpTo(sampleNumber++));
    lostOf(tripId, segment, this::channel)
        .ifPresent(lost -> added.append(lost(segment.lastMicros(), lost)));
  }

  /** Adds what comes after the last segment. */
  void addTheRest() {
    addUpTo(Long.MAX_VALUE);
  }

  /** What a segment lost, if anything. */
  static Optional<LostPart> lostOf(String tripId, Segment segment, IntFunction<Channel> channels) {
    List<LostSamples> lost = segment.lost();
    return lost.isEmpty() ? Optional.empty() : Optional.of(LostPart.of(tripId, lost, channels));
  }

  /** An event about samples that are missing. */
  static TripEntry lost(long timeMicros, LostPart lost) {
    return recording(
        timeMicros,
        String.format(
            Locale.ROOT,
            "The library was damaged: %d samples%s from %.3f s to %.3f s could not be read.",
            lost.samples(),
            lost.ofChannels(),
            lost.fromSeconds(),
            lost.toSeconds().orElse(lost.fromSeconds())));
  }

  /** An event about the recording itself. */
  static TripEntry recording(long timeMicros, String detail) {
    return new TripEntry.OfEvent(new TripEvent(timeMicros, TripEvent.Kind.RECORDING, detail));
  }

  private void add(int channel, long timeMicros, double value) {
    addUpTo(sampleNumber++);
    added.append(new Sample(channel(channel), timeMicros, value));
  }

  private Channel channel(int number) {
    return channel(channels, number);
  }

  /** Of a channel that the trip's row does not tell, only the number is known. */
  static Channel channel(List<Channel> channels, int number) {
    return number < channels.size() ? channels.get(number) : new Channel("untold_" + number, "1");
  }

  private void addUpTo(long number) {
    for (var hole = nextHole; hole != null && hole.firstSample() < number; hole = nextHole) {
      addEventsUpTo(hole.firstSample());
      added.append(lost(hole.fromMicros(), hole.lostOf(tripId)));
      nextHole = next(holes);
    }
    addEventsUpTo(number);
  }

  private void addEventsUpTo(long number) {
    for (var event = nextEvent;
        event != null && event.afterSamples() <= number;
        event = nextEvent) {
      added.append(new TripEntry.OfEvent(event.event()));
      nextEvent = next(events);
    }
  }

  private static <T> @Nullable T next(Iterator<T> iterator) {
    return iterator.hasNext() ? iterator.next() : null;
  }
}
