package steadypull.thermal;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.LatestSamples;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/** The thermal channels of a vehicle, in the order in which they are told. Immutable. */
final class WatchedChannels {
  /** Sensors lag and round: so near a limit the engine may save itself already (estimated). */
  private static final double HOT_WITHIN_KELVIN = 2;

  private static final double FRESH_SECONDS = 10;

  private final Vehicle vehicle;
  private final List<Channel> order;

  WatchedChannels(Vehicle vehicle) {
    this.vehicle = vehicle;
    Set<Channel> channels = new LinkedHashSet<>();
    vehicle.limits().values().forEach(limit -> channels.add(limit.channel()));
    channels.addAll(Channels.thermal());
    channels.retainAll(Channels.thermal());
    this.order = List.copyOf(channels);
  }

  /** Those with limits in the vehicle's order, then the others. */
  List<Channel> order() {
    return order;
  }

  /** Whether one of them stands so near its limit that torque may be taken away. */
  boolean isHot(LatestSamples samples, long timeMicros) {
    return vehicle.limits().values().stream()
        .anyMatch(
            limit ->
                samples
                        .within(limit.channel(), timeMicros, FRESH_SECONDS)
                        .orElse(Double.NEGATIVE_INFINITY)
                    >= counting(limit, samples, timeMicros) - HOT_WITHIN_KELVIN);
  }

  /** Coolant may boil below the limit that was entered. */
  private double counting(Limit entered, LatestSamples samples, long timeMicros) {
    return vehicle
        .limit(entered.channel(), OutsidePressure.kilopascals(samples, timeMicros))
        .orElse(entered)
        .celsius();
  }
}
