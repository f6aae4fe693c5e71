package steadypull.road;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of a route without a break: one point or more, in the order of travel. Holds a million
 * points in some 40 MB. Immutable; two are the same if their points are.
 */
public final class RouteSegment {
  private final double[] latitudesDegrees;
  private final double[] longitudesDegrees;
  private final double[] elevationsMetres;
  private final BitSet withElevation;
  private final long[] epochMicros;
  private final BitSet withTime;
  private final double[] distancesMetres;

  RouteSegment(RouteSegmentBuilder points) {
    if (points.size() == 0) {
      throw new IllegalArgumentException("A segment has one point or more, found none");
    }
    int size = points.size();
    latitudesDegrees = Arrays.copyOf(points.latitudesDegrees, size);
    longitudesDegrees = Arrays.copyOf(points.longitudesDegrees, size);
    elevationsMetres = Arrays.copyOf(points.elevationsMetres, size);
    withElevation = BitSet.valueOf(points.withElevation.toLongArray());
    epochMicros = Arrays.copyOf(points.epochMicros, size);
    withTime = BitSet.valueOf(points.withTime.toLongArray());
    distancesMetres = Geodesics.distancesMetres(latitudesDegrees, longitudesDegrees);
  }

  /** The segment through those points, one or more. */
  public static RouteSegment of(RoutePoint... points) {
    RouteSegmentBuilder builder = new RouteSegmentBuilder();
    Stream.of(points).forEach(builder::add);
    return builder.build();
  }

  /** How many points there are, 1 or more. */
  public int size() {
    return latitudesDegrees.length;
  }

  /** The point of that number, from 0. */
  public RoutePoint point(int index) {
    return new RoutePoint(
        latitudesDegrees[index],
        longitudesDegrees[index],
        withElevation.get(index)
            ? OptionalDouble.of(elevationsMetres[index])
            : OptionalDouble.empty(),
        withTime.get(index)
            ? Optional.of(Instant.EPOCH.plus(epochMicros[index], ChronoUnit.MICROS))
            : Optional.empty());
  }

  /** The points in the order of travel. */
  public Stream<RoutePoint> points() {
    return IntStream.range(0, size()).mapToObj(this::point);
  }

  /**
   * How far the point of that number, from 0, is along the segment: metres from its first point,
   * along geodesics of WGS 84 at height 0. A grade of 8 % makes the road 0.3 % longer than that.
   */
  public double distanceMetres(int index) {
    return distancesMetres[index];
  }

  /** From the first point to the last, as {@link #distanceMetres} says. */
  public double lengthMetres() {
    return distancesMetres[size() - 1];
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof RouteSegment that
        && Arrays.equals(latitudesDegrees, that.latitudesDegrees)
        && Arrays.equals(longitudesDegrees, that.longitudesDegrees)
        && Arrays.equals(elevationsMetres, that.elevationsMetres)
        && Arrays.equals(epochMicros, that.epochMicros)
        && withElevation.equals(that.withElevation)
        && withTime.equals(that.withTime);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        Arrays.hashCode(latitudesDegrees), Arrays.hashCode(longitudesDegrees), withTime);
  }

  @Override
  public String toString() {
    return "RouteSegment[" + size() + " points, " + Math.round(lengthMetres()) + " m]";
  }
}
