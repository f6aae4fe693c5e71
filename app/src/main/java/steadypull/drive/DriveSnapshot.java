package steadypull.drive;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.advice.AdviceLine;
import steadypull.channel.Channel;
import steadypull.tablet.TabletNews;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.AssumedPlaces;

/**
 * Everything that the Drive screen shows at one moment. Immutable; made once a second and at every
 * change of the advice line.
 *
 * @param timeMicros microseconds since trip start
 * @param clock the trip's clock: its start plus the time, and what the tablet's clock was set by
 *     since; in the wall's time on a live drive
 * @param vehicle the vehicle
 * @param demo whether the vehicle is simulated
 * @param recording whether samples are kept
 * @param link the link
 * @param advice the advice line
 * @param adviceSinceMicros when that line came into its state, microseconds since trip start; not
 *     after {@code timeMicros}
 * @param snoozeSeconds how long the advisory could be put aside now; empty if it cannot
 * @param strips thermal channels, first to run out first; the screen shows the first four
 * @param road the road strip
 * @param diagnosis what the control units told about faults and about themselves
 * @param tablet what is to be shown of the tablet that records
 */
public record DriveSnapshot(
    long timeMicros,
    Instant clock,
    Vehicle vehicle,
    boolean demo,
    RecordingState recording,
    LinkSummary link,
    AdviceLine advice,
    long adviceSinceMicros,
    OptionalDouble snoozeSeconds,
    List<StripState> strips,
    RoadState road,
    Diagnosis diagnosis,
    Optional<TabletNews> tablet) {
  public DriveSnapshot {
    Objects.requireNonNull(clock);
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(diagnosis);
    Objects.requireNonNull(tablet);
    if (adviceSinceMicros > timeMicros) {
      throw new IllegalArgumentException(
          "The advice line cannot stand since %d us at %d us"
              .formatted(adviceSinceMicros, timeMicros));
    }
    strips = List.copyOf(strips);
  }

  /**
   * Channels shown of which nobody has confirmed that their sensor sits there; the usual source is
   * taken for them.
   */
  public List<Channel> assumedPlaces() {
    return strips.stream()
        .filter(strip -> strip.latestCelsius().isPresent())
        .map(StripState::channel)
        .filter(channel -> AssumedPlaces.isAssumed(channel, vehicle))
        .toList();
  }

  /** The same moment with another state of the recording. */
  public DriveSnapshot with(RecordingState other) {
    return new DriveSnapshot(
        timeMicros,
        clock,
        vehicle,
        demo,
        other,
        link,
        advice,
        adviceSinceMicros,
        snoozeSeconds,
        strips,
        road,
        diagnosis,
        tablet);
  }

  /** The same moment with the link closed for a reason. */
  DriveSnapshot withLinkClosed(String reason) {
    LinkSummary closed =
        new LinkSummary(LinkSummary.State.CLOSED, 0, 0, link.expectedChannels(), reason);
    return new DriveSnapshot(
        timeMicros,
        clock,
        vehicle,
        demo,
        recording,
        closed,
        advice,
        adviceSinceMicros,
        snoozeSeconds,
        strips,
        road,
        diagnosis,
        tablet);
  }
}
