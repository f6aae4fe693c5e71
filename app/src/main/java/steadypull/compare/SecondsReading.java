package steadypull.compare;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.grade.DerivedChannels;
import steadypull.vehicle.Vehicle;

/**
 * Reads the samples of a trip into columns of seconds, and computes from these what is derived
 * unless the trip brings it. A live drive computes it from what had come by then, up to a second
 * late; a finished trip need not. One thread, once.
 */
final class SecondsReading {
  private static final double MICROS = 1e6;

  private final Map<Channel, SecondsColumn> columns = new HashMap<>();
  private final Vehicle vehicle;
  private final Collection<Channel> brought;
  private long lastMicros;

  /**
   * A reading.
   *
   * @param brought channels that the trip tells; derived ones that are not among them are computed
   */
  SecondsReading(Vehicle vehicle, Collection<Channel> brought) {
    this.vehicle = vehicle;
    this.brought = List.copyOf(brought);
  }

  void accept(Sample sample) {
    lastMicros = Math.max(lastMicros, sample.timeMicros());
    if (isComputed(sample.channel())) {
      return;
    }
    take(sample);
  }

  private boolean isComputed(Channel channel) {
    return Channels.derived().contains(channel) && !brought.contains(channel);
  }

  private void take(Sample sample) {
    columns.computeIfAbsent(sample.channel(), SecondsColumn::new).accept(sample);
  }

  TripSeconds finish(TripSeconds.Said said) {
    int seconds = 1 + (int) (lastMicros / MICROS);
    Map<Channel, double[]> values = new TreeMap<>();
    columns.forEach((channel, column) -> values.put(channel, column.values(seconds)));
    derive(values, seconds);
    columns.forEach((channel, column) -> values.put(channel, column.values(seconds)));
    return TripSeconds.of(said, seconds, values);
  }

  private void derive(Map<Channel, double[]> values, int seconds) {
    DerivedChannels derived = new DerivedChannels(vehicle);
    for (int second = 0; second < seconds; second++) {
      long micros = Math.round(second * MICROS);
      for (Map.Entry<Channel, double[]> column : values.entrySet()) {
        double value = column.getValue()[second];
        if (!Double.isNaN(value) && !Channels.derived().contains(column.getKey())) {
          derived.accept(new Sample(column.getKey(), micros, value));
        }
      }
      int at = second;
      if (second > 0) {
        derived.tick(micros).stream()
            .filter(sample -> isComputed(sample.channel()) && isSpeedHeard(values, at))
            .forEach(this::take);
      }
    }
  }

  /** A live drive goes on for some seconds with what it heard last; here a silence is one. */
  private static boolean isSpeedHeard(Map<Channel, double[]> values, int second) {
    double[] speeds = values.get(Channels.VEHICLE_SPEED);
    return speeds != null && !Double.isNaN(speeds[second]);
  }
}
