package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.road.LatestSamples;
import steadypull.road.RoadLoad;

/**
 * A moment of a drive as far as the load is concerned.
 *
 * @param samples what was heard until then
 * @param timeMicros microseconds since trip start
 * @param load what the vehicle tells of it; empty if nothing does
 * @param figures of the rig in this air; empty if its mass is unknown
 * @param grade that the present load amounts to, a fraction; empty if it cannot be told
 * @param isHot whether a channel stands so near its limit that torque may be taken away
 */
record DriveMoment(
    LatestSamples samples,
    long timeMicros,
    Optional<Load> load,
    Optional<RoadLoad> figures,
    OptionalDouble grade,
    boolean isHot) {
  private static final double MICROS_PER_SECOND = 1e6;

  double seconds() {
    return timeMicros / MICROS_PER_SECOND;
  }

  /** The last value of a channel, or empty if none came within some seconds. */
  OptionalDouble fresh(Channel channel, double seconds) {
    return samples.within(channel, timeMicros, seconds);
  }

  /** What may be assumed from here on. */
  LoadAssumption assumption(LoadMaps maps) {
    return new LoadAssumption(maps, figures, grade);
  }
}
