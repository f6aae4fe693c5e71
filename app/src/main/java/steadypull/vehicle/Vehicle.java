package steadypull.vehicle;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import steadypull.channel.Channel;

/**
 * A vehicle as the workshop knows it. Immutable; changes give a new value.
 *
 * @param name the owner's name for it; not blank
 * @param layout how the charge air is cooled
 * @param limits by channel id, in the order in which they are shown
 * @param rig what it moves
 * @param driveline gears and axle
 * @param speeds speeds that advice may name
 * @param sources sensor roles that differ from the usual ones
 * @param signals the vehicle's own signals
 */
public record Vehicle(
    String name,
    CoolingLayout layout,
    Map<String, Limit> limits,
    Rig rig,
    Driveline driveline,
    SpeedRange speeds,
    List<SignalSource> sources,
    List<VehicleSignal> signals) {
  public Vehicle {
    Objects.requireNonNull(layout);
    Objects.requireNonNull(rig);
    Objects.requireNonNull(driveline);
    Objects.requireNonNull(speeds);
    if (name.isBlank()) {
      throw new IllegalArgumentException("A vehicle has a name, found blank text");
    }
    limits = Collections.unmodifiableMap(new LinkedHashMap<>(limits));
    sources = List.copyOf(sources);
    signals = List.copyOf(signals);
  }

  /** The limit of a channel, or empty if the channel has none. */
  public Optional<Limit> limit(Channel channel) {
    return Optional.ofNullable(limits.get(channel.id()));
  }
}
