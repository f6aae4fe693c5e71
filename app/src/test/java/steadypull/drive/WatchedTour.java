package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Sample;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.road.TourDrive;
import steadypull.road.grade.DerivedChannels;

/** Tours as the watch over the road sees them, second by second. */
final class WatchedTour {
  private static final long SECOND_MICROS = 1_000_000;

  /**
   * What is told at the end of a second.
   *
   * @param metres where the vehicle truly was, of the tour
   */
  record Second(double metres, RoadAhead ahead, Optional<ClimbAhead> climb) {
    boolean isKnown() {
      return ahead instanceof RoadAhead.Known;
    }
  }

  private WatchedTour() {}

  static List<Second> of(TourDrive drive, RoadSight sight) {
    RoadWatch watch = new RoadWatch(Optional.of(sight));
    DerivedChannels derived = new DerivedChannels(drive.vehicle());
    List<Second> seconds = new ArrayList<>();
    int next = 0;
    for (TourDrive.Truth truth : drive.truth()) {
      long micros = Math.round(truth.seconds()) * SECOND_MICROS;
      for (; next < drive.samples().size(); next++) {
        Sample sample = drive.samples().get(next);
        if (sample.timeMicros() >= micros) {
          break;
        }
        watch.accept(sample);
        derived.accept(sample);
      }
      derived.tick(micros).forEach(watch::accept);
      watch.second(micros, derived.second());
      seconds.add(new Second(truth.place().metres(), watch.ahead(), watch.climb()));
    }
    return seconds;
  }
}
