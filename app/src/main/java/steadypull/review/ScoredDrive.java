package steadypull.review;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadypull.channel.Channel;

/**
 * What came on a drive, second by second, against which warnings are held. Seconds count from 1.
 *
 * @param seconds how long it was
 * @param derates when torque was cut for heat, in order, none overlapping
 * @param celsius what each thermal channel said, index by second, NaN where it was not heard; of
 *     length {@code seconds + 1} or more
 * @param limits of those channels, degC
 */
public record ScoredDrive(
    int seconds,
    List<Derated> derates,
    Map<Channel, double[]> celsius,
    Map<Channel, Double> limits) {

  /**
   * A derate.
   *
   * @param fromSeconds when torque began to be cut
   * @param untilSeconds when it was cut for the last time
   */
  public record Derated(double fromSeconds, double untilSeconds) {}

  public ScoredDrive {
    derates = List.copyOf(derates);
    celsius = Map.copyOf(celsius);
    limits = Map.copyOf(limits);
    for (double[] each : celsius.values()) {
      if (each.length <= seconds) {
        throw new IllegalArgumentException(
            "Expected a value for each of %d seconds, found %d".formatted(seconds, each.length));
      }
    }
  }

  /** How near a channel came to a limit over some seconds, K; infinite where it was not heard. */
  public double nearestKelvin(Channel channel, double limitCelsius, int from, int until) {
    double[] said = celsius.get(channel);
    return said == null
        ? Double.POSITIVE_INFINITY
        : Arrays.stream(said, from, Math.min(seconds, until) + 1)
            .filter(value -> !Double.isNaN(value))
            .map(value -> limitCelsius - value)
            .min()
            .orElse(Double.POSITIVE_INFINITY);
  }

  /** The limited channels that were heard, always in the same order. */
  List<Channel> watched() {
    Map<String, Channel> sorted = new TreeMap<>();
    limits.keySet().stream()
        .filter(celsius::containsKey)
        .forEach(channel -> sorted.put(channel.id(), channel));
    return List.copyOf(sorted.values());
  }
}
