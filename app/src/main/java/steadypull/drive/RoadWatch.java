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

/**
 * Tells somebody who knows roads where the vehicle is, second by second, and asks what lies ahead.
 * Pipeline thread only.
 */
final class RoadWatch {
  private static final double A_SECOND = 0.999;
  private static final double FRESH_SECONDS = 5;
  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double MICROS_PER_SECOND = 1e6;

  private final RoadSight sight;
  private final LatestSamples latest = new LatestSamples();
  private final RoadSoFar soFar = new RoadSoFar();
  private final PassPieces pieces = new PassPieces();
  private long latitudeMicros = -1;
  private RoadAhead ahead = new RoadAhead.Unknown();
  private Optional<ClimbAhead> climb = Optional.empty();

  RoadWatch(RoadSight sight) {
    this.sight = sight;
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
   * Lets a second pass.
   *
   * @param driven what it told of the road, if it told a speed
   */
  void second(long timeMicros, Optional<RoadSecond> driven) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    double metres =
        latest.within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS).orElse(0)
            / KILOMETRES_PER_HOUR;
    double grade = latest.within(Channels.ROAD_GRADE, timeMicros, FRESH_SECONDS).orElse(0) / 100;
    sight.moved(seconds, metres);
    soFar.moved(seconds, metres, grade);
    Optional<PositionFix> fix = fix(timeMicros);
    if (sight.learnsOnTheWay()) {
      driven.ifPresentOrElse(
          second -> pieces.accept(second, fix).ifPresent(sight::driven), pieces::restart);
    }
    fix.ifPresent(sight::fixed);
    ahead = sight.ahead();
    climb =
        switch (ahead) {
          case RoadAhead.Unknown() -> Optional.empty();
          case RoadAhead.Ungraded() -> Optional.empty();
          case RoadAhead.Known known -> soFar.climb(known.certain());
        };
  }

  /** What is known of the road ahead. */
  RoadAhead ahead() {
    return ahead;
  }

  /** The climb that the vehicle is on or comes to next. */
  Optional<ClimbAhead> climb() {
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
