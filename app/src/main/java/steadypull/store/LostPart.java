package steadypull.store;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import steadypull.channel.Channel;
import steadypull.store.column.LostSamples;

/**
 * Samples of a trip that cannot be read any more. Immutable.
 *
 * @param tripId of the trip; where even that is lost, what can be said of it
 * @param isWholeTrip whether nothing of the trip is left
 * @param fromSeconds no sample before that is lost; seconds since the start of the trip
 * @param toSeconds no sample after that is lost; empty: nobody can tell
 * @param samples how many; 0: nobody can tell
 * @param channels of which; empty: of all that were recorded then
 */
public record LostPart(
    String tripId,
    boolean isWholeTrip,
    double fromSeconds,
    OptionalDouble toSeconds,
    long samples,
    List<Channel> channels) {
  private static final double MICROS_PER_SECOND = 1e6;

  public LostPart {
    Objects.requireNonNull(tripId);
    Objects.requireNonNull(toSeconds);
    channels = List.copyOf(channels);
  }

  /** Such as {@code " of engine_speed, gear"}; empty if all channels lost something. */
  public String ofChannels() {
    return channels.isEmpty()
        ? ""
        : channels.stream().map(Channel::id).collect(Collectors.joining(", ", " of ", ""));
  }

  /** Nothing of a trip is left. */
  static LostPart whole(String trip, OptionalDouble toSeconds) {
    return new LostPart(trip, true, 0, toSeconds, 0, List.of());
  }

  /** All that was recorded between two moments. */
  static LostPart piece(String tripId, long fromMicros, long toMicros, long samples) {
    return new LostPart(
        tripId,
        false,
        fromMicros / MICROS_PER_SECOND,
        OptionalDouble.of(toMicros / MICROS_PER_SECOND),
        samples,
        List.of());
  }

  /**
   * What one segment lost.
   *
   * @param lost at least one
   * @param channels by their number on the trip
   */
  static LostPart of(String tripId, List<LostSamples> lost, IntFunction<Channel> channels) {
    return new LostPart(
        tripId,
        false,
        lost.stream().mapToLong(LostSamples::fromMicros).min().orElseThrow() / MICROS_PER_SECOND,
        OptionalDouble.of(
            lost.stream().mapToLong(LostSamples::toMicros).max().orElseThrow() / MICROS_PER_SECOND),
        lost.stream().mapToLong(LostSamples::samples).sum(),
        lost.stream()
            .mapToInt(LostSamples::channel)
            .distinct()
            .sorted()
            .mapToObj(channels)
            .toList());
  }
}
