package steadypull.channel;

import java.util.Objects;

/**
 * One value of one channel, stamped when it arrived. Immutable.
 *
 * @param channel what was measured
 * @param timeMicros microseconds since the start of the trip, zero or more
 * @param value value in the channel's unit, finite; there is one zero, negative zero becomes it
 */
public record Sample(Channel channel, long timeMicros, double value) {
  public Sample {
    Objects.requireNonNull(channel);
    if (timeMicros < 0) {
      throw new IllegalArgumentException(
          "A sample lies after the start of its trip, found " + timeMicros + " us");
    }
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("A sample is finite, found " + value);
    }
    // The library's file format knows no negative zero; a value must come back as it went in.
    value += 0.0;
  }
}
