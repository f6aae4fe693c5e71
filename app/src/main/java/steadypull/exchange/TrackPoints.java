package steadypull.exchange;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.RoutePoint;
import steadypull.store.TripSummary;

/**
 * Makes the points of a track from a trip's samples. A point is a latitude and a longitude of the
 * same moment; it is told once that moment is over. Values that no later point takes along are not
 * told. One thread.
 */
final class TrackPoints implements Consumer<Sample> {
  private static final long GAP_MICROS = Math.round(TripSummary.GAP_SECONDS * 1e6);

  private final Instant start;
  private final ExportChoice choice;
  private final Consumer<TrackPoint> taker;

  /** By channel, what came since the last point. */
  private final Map<Channel, Sample> fresh = new TreeMap<>();

  private long nowMicros;
  private @Nullable Long lastMicros;
  private long places;
  private long impossible;

  /**
   * Begins.
   *
   * @param start of the trip
   * @param choice which values go with the points
   */
  TrackPoints(Instant start, ExportChoice choice, Consumer<TrackPoint> taker) {
    this.start = start;
    this.choice = choice;
    this.taker = taker;
  }

  @Override
  public void accept(Sample sample) {
    if (sample.timeMicros() != nowMicros) {
      finish();
      nowMicros = sample.timeMicros();
    }
    fresh.put(sample.channel(), sample);
  }

  /** The moment is over. */
  void finish() {
    Sample latitude = fresh.get(Channels.LATITUDE);
    Sample longitude = fresh.get(Channels.LONGITUDE);
    if (latitude != null && longitude != null && isNow(latitude) && isNow(longitude)) {
      tell(latitude.value(), eastOf(longitude.value()));
    }
  }

  /** How many points were told. */
  long places() {
    return places;
  }

  /** How many positions were left out because there is no such place. */
  long impossible() {
    return impossible;
  }

  private void tell(double latitude, double longitude) {
    if (RoutePoint.isLatitude(latitude) && RoutePoint.isLongitude(longitude)) {
      Optional<Instant> moment = Optional.of(start.plus(nowMicros, ChronoUnit.MICROS));
      RoutePoint place = new RoutePoint(latitude, longitude, elevation(), moment);
      taker.accept(new TrackPoint(nowMicros, place, values(), isAfterGap()));
      lastMicros = nowMicros;
      places++;
    } else {
      impossible++;
    }
    fresh.clear();
  }

  private boolean isAfterGap() {
    return lastMicros == null || nowMicros - lastMicros > GAP_MICROS || nowMicros < lastMicros;
  }

  /** The meridian opposite to zero has two names; GPX knows one of them. */
  private static double eastOf(double longitudeDegrees) {
    return longitudeDegrees == 180 ? -180 : longitudeDegrees;
  }

  private OptionalDouble elevation() {
    Sample altitude = fresh.get(Channels.ALTITUDE);
    return altitude != null
            && choice.includes(Channels.ALTITUDE)
            && nowMicros - altitude.timeMicros() <= GAP_MICROS
            && RoutePoint.isElevation(altitude.value())
        ? OptionalDouble.of(altitude.value())
        : OptionalDouble.empty();
  }

  private List<Sample> values() {
    return fresh.values().stream()
        .filter(sample -> !Channels.located().contains(sample.channel()))
        .filter(sample -> choice.includes(sample.channel()))
        .toList();
  }

  private boolean isNow(Sample sample) {
    return sample.timeMicros() == nowMicros;
  }
}
