package steadypull.store;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.column.Segment;

/**
 * Adds the samples and events of a salvaged trip in the order in which they were accepted, and an
 * event where samples are missing. One thread, one pass.
 */
final class SalvagedEntries {
  private static final double MICROS_PER_SECOND = 1e6;

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
   * @param channels of the trip, in its order
   * @param events in their order
   * @param holes ascending
   */
  SalvagedEntries(
      AddedTrip added,
      List<Channel> channels,
      List<LibraryRow.OfEvent> events,
      List<KeptSegments.Hole> holes) {
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
    segment.forEach(this::add);
  }

  /** Adds what comes after the last segment. */
  void addTheRest() {
    addUpTo(Long.MAX_VALUE);
  }

  /** An event about the recording itself. */
  static TripEntry recording(long timeMicros, String detail) {
    return new TripEntry.OfEvent(new TripEvent(timeMicros, TripEvent.Kind.RECORDING, detail));
  }

  private void add(int channel, long timeMicros, double value) {
    addUpTo(sampleNumber++);
    added.append(new Sample(channel(channel), timeMicros, value));
  }

  /** Of a channel that the trip's row does not tell, only the number is known. */
  private Channel channel(int number) {
    return number < channels.size() ? channels.get(number) : new Channel("untold_" + number, "1");
  }

  private void addUpTo(long number) {
    for (var hole = nextHole; hole != null && hole.firstSample() < number; hole = nextHole) {
      addEventsUpTo(hole.firstSample());
      added.append(lost(hole));
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

  private static TripEntry lost(KeptSegments.Hole hole) {
    return recording(
        hole.fromMicros(),
        String.format(
            Locale.ROOT,
            "The library was damaged: %d samples from %.3f s to %.3f s could not be read.",
            hole.nextSample() - hole.firstSample(),
            hole.fromMicros() / MICROS_PER_SECOND,
            hole.toMicros() / MICROS_PER_SECOND));
  }

  private static <T> @Nullable T next(Iterator<T> iterator) {
    return iterator.hasNext() ? iterator.next() : null;
  }
}
