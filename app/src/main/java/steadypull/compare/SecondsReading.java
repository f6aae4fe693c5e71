package steadypull.compare;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.grade.DerivedSeconds;
import steadypull.vehicle.Vehicle;

/**
 * Reads the samples of a trip into columns of seconds, computing what is derived unless the trip
 * brings it. One thread, once.
 */
final class SecondsReading {
  private static final double MICROS = 1e6;

  private final Map<Channel, SecondsColumn> columns = new HashMap<>();
  private final Collection<Channel> brought;
  private final DerivedSeconds derived;
  private long lastMicros;

  /**
   * A reading.
   *
   * @param brought channels that the trip tells
   */
  SecondsReading(Vehicle vehicle, Collection<Channel> brought) {
    this.brought = List.copyOf(brought);
    this.derived = new DerivedSeconds(vehicle);
  }

  void accept(Sample sample) {
    derived.before(sample).forEach(this::takeDerived);
    take(sample);
    lastMicros = Math.max(lastMicros, sample.timeMicros());
  }

  private void takeDerived(Sample sample) {
    if (!brought.contains(sample.channel()) && Channels.derived().contains(sample.channel())) {
      take(sample);
    }
  }

  private void take(Sample sample) {
    columns.computeIfAbsent(sample.channel(), SecondsColumn::new).accept(sample);
  }

  TripSeconds finish(TripSeconds.Said said) {
    return TripSeconds.of(said, 1 + (int) (lastMicros / MICROS), columns);
  }
}
