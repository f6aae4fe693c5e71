package steadypull.review;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.KnownClimb;
import steadypull.thermal.Sustainable;

/**
 * A climb of a trip, and what it asked of the vehicle. Immutable.
 *
 * @param number within the trip, from 1
 * @param climb where and how long
 * @param identity which climb it is
 * @param peaksCelsius the hottest of each thermal channel that told anything, in the channels'
 *     order
 * @param leastHeadroomKelvin limit less peak of those that have a limit; below 0 over the limit
 * @param deratedSeconds for how long torque was cut at a hot channel; empty if that was not told
 * @param wheelKilowattHours what came to the wheels; empty if power could not be told
 * @param sustainableKilowatts power at the wheels that could be held for ever at the climb's mean
 *     speed, in its gear and air; empty if the trip taught too little of the vehicle's heat
 */
public record ClimbReview(
    int number,
    Climb climb,
    ClimbIdentity identity,
    Map<Channel, Double> peaksCelsius,
    Map<Channel, Double> leastHeadroomKelvin,
    OptionalDouble deratedSeconds,
    OptionalDouble wheelKilowattHours,
    Optional<Sustainable> sustainableKilowatts) {
  public ClimbReview {
    Objects.requireNonNull(climb);
    Objects.requireNonNull(identity);
    Objects.requireNonNull(sustainableKilowatts);
    peaksCelsius = Collections.unmodifiableMap(new LinkedHashMap<>(peaksCelsius));
    leastHeadroomKelvin = Collections.unmodifiableMap(new LinkedHashMap<>(leastHeadroomKelvin));
  }

  /** As people call it: by its own name, else by its place in the trip, "climb 2, km 31". */
  public String name() {
    String own = ownName();
    return own.isEmpty()
        ? "climb %d, km %d".formatted(number, (long) (climb.startMetres() / 1000))
        : own;
  }

  private String ownName() {
    return switch (identity) {
      case ClimbIdentity.Known(KnownClimb known) -> known.name();
      case ClimbIdentity.New(KnownClimb found) -> found.name();
      case ClimbIdentity.Part _, ClimbIdentity.Fragment _, ClimbIdentity.Unplaced _ -> "";
    };
  }
}
