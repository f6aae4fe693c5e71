package steadypull.drive;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.road.grade.PassPieces;
import steadypull.road.grade.RoadSecond;
import steadypull.store.TripEvent;

/**
 * Tells somebody who knows roads where the vehicle is, second by second, and asks what lies ahead;
 * where nobody does, it goes by what the trip has kept of that. Pipeline thread only.
 */
final class RoadWatch {
  private static final double A_SECOND = 1;
  private static final double FRESH_SECONDS = 5;

  /** Elevations of a file err alike over twice that length. */
  private static final double HEIGHT_METRES = 150;

  private static final double MICROS_PER_SECOND = 1e6;

  private final Optional<RoadSight> sight;
  private final Odometer odometer = new Odometer();
  private final RoadTold told = new RoadTold();
  private final LatestSamples latest = new LatestSamples();
  private final RoadSoFar soFar = new RoadSoFar();
  private final PassPieces pieces = new PassPieces();
  private long latitudeMicros = -1;
  private Optional<ClimbAhead> climb = Optional.empty();

  /** Found at most once a second, and only for who asks. */
  private boolean isClimbSought = true;

  private Optional<TripEvent> kept = Optional.empty();
  private Optional<TripEvent> keptHeight = Optional.empty();
  private double metresSinceHeight;

  /**
   * A watch over a drive.
   *
   * @param sight knows roads; empty where only what the trip has kept counts
   */
  RoadWatch(Optional<RoadSight> sight) {
    this.sight = sight;
  }

  /** Takes what a trip has kept of the road ahead; left aside where somebody knows roads now. */
  void accept(TripEvent event) {
    if (sight.isPresent()) {
      return;
    }
    if (RoadNews.routeHeight(event).isPresent()) {
      keptHeight = Optional.of(event);
    } else {
      told.take(event);
      kept = Optional.of(event);
    }
  }

  /** Takes a sample; those that say nothing of the way are left aside. */
  void accept(Sample sample) {
    if (Channels.located().contains(sample.channel())
        || sample.channel().equals(Channels.VEHICLE_SPEED)
        || sample.channel().equals(Channels.ROAD_GRADE)) {
      latest.accept(sample);
    }
    if (sample.channel().equals(Channels.LATITUDE)) {
      latitudeMicros = sample.timeMicros();
    }
  }

  /**
   * What an imported route tells of the height where a second ends; before {@link #second} of it.
   *
   * @return what the trip has to keep of that, as of a moment before the second was over
   */
  Optional<TripEvent> routeHeight(long timeMicros) {
    if (sight.isEmpty()) {
      Optional<TripEvent> event = keptHeight;
      keptHeight = Optional.empty();
      return event;
    }
    if (metresSinceHeight < HEIGHT_METRES) {
      return Optional.empty();
    }
    OptionalDouble height =
        fix(timeMicros).map(sight.get()::routeHeight).orElse(OptionalDouble.empty());
    if (height.isEmpty()) {
      return Optional.empty();
    }
    metresSinceHeight = 0;
    return Optional.of(RoadNews.event(timeMicros - 1, height.getAsDouble()));
  }

  /**
   * Lets a second pass.
   *
   * @param driven what it told of the road, if it told a speed
   * @return what the trip has to keep of the road ahead, if that has changed, as of a moment before
   *     the second was over
   */
  Optional<TripEvent> second(long timeMicros, Optional<RoadSecond> driven) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    double metres =
        odometer.metres(latest.within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS).orElse(0));
    double grade = latest.within(Channels.ROAD_GRADE, timeMicros, FRESH_SECONDS).orElse(0) / 100;
    soFar.moved(seconds, metres, grade);
    metresSinceHeight += metres;
    Optional<TripEvent> news =
        sight.isEmpty()
            ? kept
            : told.hear(timeMicros, metres, ask(sight.get(), timeMicros, metres, driven));
    kept = Optional.empty();
    told.moved(metres);
    isClimbSought = false;
    return news;
  }

  private RoadAhead ask(
      RoadSight somebody, long timeMicros, double metres, Optional<RoadSecond> driven) {
    somebody.moved(timeMicros / MICROS_PER_SECOND, metres);
    latest
        .within(Channels.ROAD_GRADE, timeMicros, A_SECOND)
        .ifPresent(percent -> somebody.climbing(percent / 100));
    Optional<PositionFix> fix = fix(timeMicros);
    if (somebody.learnsOnTheWay()) {
      driven.ifPresentOrElse(
          second -> pieces.accept(second, fix).ifPresent(somebody::driven), pieces::restart);
    }
    fix.ifPresent(somebody::fixed);
    return somebody.ahead();
  }

  /** What is known of the road ahead. */
  RoadAhead ahead() {
    return told.ahead();
  }

  /** The climb that the vehicle is on or comes to next. */
  Optional<ClimbAhead> climb() {
    if (!isClimbSought) {
      isClimbSought = true;
      climb =
          switch (told.ahead()) {
            case RoadAhead.Unknown() -> Optional.empty();
            case RoadAhead.Ungraded() -> Optional.empty();
            case RoadAhead.Known known -> soFar.climb(known.certain());
          };
    }
    return climb;
  }

  private Optional<PositionFix> fix(long timeMicros) {
    OptionalDouble latitude = latest.within(Channels.LATITUDE, timeMicros, A_SECOND);
    OptionalDouble longitude = latest.within(Channels.LONGITUDE, timeMicros, A_SECOND);
    return latitude.isPresent() && longitude.isPresent()
        ? Optional.of(
            new PositionFix(
                latitudeMicros / MICROS_PER_SECOND,
                latitude.getAsDouble(),
                longitude.getAsDouble(),
                latest.within(Channels.ALTITUDE, timeMicros, A_SECOND)))
        : Optional.empty();
  }
}
