package steadypull.road;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.BitSet;

/** Gathers the points of a segment, in the order of travel. One thread. */
public final class RouteSegmentBuilder {
  private static final int FIRST_ROOM = 16;

  double[] latitudesDegrees = new double[FIRST_ROOM];
  double[] longitudesDegrees = new double[FIRST_ROOM];
  double[] elevationsMetres = new double[FIRST_ROOM];
  long[] epochMicros = new long[FIRST_ROOM];
  final BitSet withElevation = new BitSet();
  final BitSet withTime = new BitSet();
  private int size;

  /** Adds a point behind the others. */
  public void add(RoutePoint point) {
    makeRoom();
    // There is one zero; negative zero becomes it.
    latitudesDegrees[size] = point.latitudeDegrees() + 0.0;
    longitudesDegrees[size] = point.longitudeDegrees() + 0.0;
    point.elevationMetres().ifPresent(metres -> setElevation(metres + 0.0));
    point.time().ifPresent(this::setTime);
    size++;
  }

  /** How many points there are so far. */
  public int size() {
    return size;
  }

  /** The segment through the points so far, one or more. */
  public RouteSegment build() {
    return new RouteSegment(this);
  }

  private void setElevation(double metres) {
    elevationsMetres[size] = metres;
    withElevation.set(size);
  }

  private void setTime(Instant moment) {
    epochMicros[size] = ChronoUnit.MICROS.between(Instant.EPOCH, moment);
    withTime.set(size);
  }

  private void makeRoom() {
    if (size < latitudesDegrees.length) {
      return;
    }
    int room = size + size / 2;
    latitudesDegrees = Arrays.copyOf(latitudesDegrees, room);
    longitudesDegrees = Arrays.copyOf(longitudesDegrees, room);
    elevationsMetres = Arrays.copyOf(elevationsMetres, room);
    epochMicros = Arrays.copyOf(epochMicros, room);
  }
}
