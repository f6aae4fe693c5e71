package steadypull.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import steadypull.channel.Channel;

/**
 * What a list of trips shows of one trip. Times are seconds since its start.
 *
 * @param id short, sortable by start, fit for a file name, such as {@code 20260715T174512Z-ab12}
 * @param origin the trip's own id, the same in every library that holds the trip
 * @param vehicleName name of the vehicle when the trip began
 * @param start the moment of time zero
 * @param offset of the local time from UTC at the start; empty: nobody knows
 * @param durationSeconds up to the end; of a trip that was never sealed, up to the last commit
 * @param distanceMetres from vehicle speed; empty if that was never measured
 * @param samples how many samples the trip holds
 * @param channels in the order in which they first appeared
 * @param gaps stretches longer than {@link #GAP_SECONDS} in which the vehicle told nothing, from
 *     the start of the trip to its end, earliest first
 * @param sealed true if the trip was brought to its end; false while it is recorded and after a
 *     crash
 * @param details what people say of it
 * @param source where the samples come from: a port or the name of a file
 * @param link who answered
 * @param softwareVersion version of the program that recorded
 */
public record TripSummary(
    String id,
    String origin,
    String vehicleName,
    Instant start,
    Optional<ZoneOffset> offset,
    double durationSeconds,
    OptionalDouble distanceMetres,
    long samples,
    List<Channel> channels,
    List<Gap> gaps,
    boolean sealed,
    TripDetails details,
    String source,
    LinkIdentity link,
    String softwareVersion) {
  /** Silence of all channels that counts as a gap begins beyond this. Our choice. */
  public static final double GAP_SECONDS = 5;

  public TripSummary {
    Objects.requireNonNull(id);
    Objects.requireNonNull(origin);
    Objects.requireNonNull(vehicleName);
    Objects.requireNonNull(start);
    Objects.requireNonNull(offset);
    Objects.requireNonNull(details);
    Objects.requireNonNull(source);
    Objects.requireNonNull(link);
    Objects.requireNonNull(softwareVersion);
    channels = List.copyOf(channels);
    gaps = List.copyOf(gaps);
  }

  /** The user's words for the run; may be empty. */
  public String label() {
    return details.label();
  }

  /** True if id, vehicle, adapter or anything that people said of it holds what is looked for. */
  boolean mentions(Predicate<String> wanted) {
    return wanted.test(id)
        || wanted.test(vehicleName)
        || wanted.test(link.adapter())
        || wanted.test(details.label())
        || wanted.test(details.note())
        || details.tags().stream().anyMatch(wanted)
        || wanted.test(details.fitted())
        || wanted.test(details.outside());
  }

  /**
   * A stretch without any sample.
   *
   * @param fromSeconds the last sample before it, or the start of the trip
   * @param toSeconds the first sample after it, or the end of the trip
   */
  public record Gap(double fromSeconds, double toSeconds) {}
}
