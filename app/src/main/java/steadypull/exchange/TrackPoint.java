package steadypull.exchange;

import java.util.List;
import steadypull.channel.Sample;
import steadypull.road.RoutePoint;

/**
 * A point of a trip's track.
 *
 * @param timeMicros when it was passed, microseconds since the start of the trip
 * @param place with its moment and, where it was measured since the point before, its altitude
 * @param values of every other channel the last one that came since the point before, by channel
 * @param isAfterGap true if no unbroken stretch leads to it, as for the first point
 */
record TrackPoint(long timeMicros, RoutePoint place, List<Sample> values, boolean isAfterGap) {
  TrackPoint {
    values = List.copyOf(values);
  }
}
