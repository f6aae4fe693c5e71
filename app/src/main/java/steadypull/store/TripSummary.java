package steadypull.store;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/**
 * What a list of trips shows of one trip. Times are seconds since its start.
 *
 * @param id short, sortable by start, fit for a file name, such as {@code 20260715T174512Z-ab12}
 * @param vehicleName name of the vehicle when the trip began
 * @param start the moment of time zero
 * @param durationSeconds up to the end; of a trip that was never sealed, up to the last commit
 * @param distanceMetres from vehicle speed; empty if that was never measured
 * @param samples how many samples the trip holds
 * @param channels in the order in which they first appeared
 * @param gaps stretches longer than {@link #GAP_SECONDS} in which no channel had a sample, from the
 *     start of the trip to its end, earliest first
 * @param sealed true if the trip was brought to its end; false while it is recorded and after a
 *     crash
 * @param label the user's words for the run; may be empty
 */
public record TripSummary(
    String id,
    String vehicleName,
    Instant start,
    double durationSeconds,
    OptionalDouble distanceMetres,
    long samples,
    List<Channel> channels,
    List<Gap> gaps,
    boolean sealed,
    String label) {
  /** Silence of all channels that counts as a gap begins beyond this. Our choice. */
  public static final double GAP_SECONDS = 5;

  public TripSummary {
    Objects.requireNonNull(id);
    Objects.requireNonNull(vehicleName);
    Objects.requireNonNull(start);
    Objects.requireNonNull(label);
    channels = List.copyOf(channels);
    gaps = List.copyOf(gaps);
  }

  /** True if id, vehicle or label holds that text, in whatever case. */
  boolean mentions(String text) {
    return (id + "\n" + vehicleName + "\n" + label)
        .toLowerCase(Locale.ROOT)
        .contains(text.toLowerCase(Locale.ROOT));
  }

  /**
   * A stretch without any sample.
   *
   * @param fromSeconds the last sample before it, or the start of the trip
   * @param toSeconds the first sample after it, or the end of the trip
   */
  public record Gap(double fromSeconds, double toSeconds) {}
}
