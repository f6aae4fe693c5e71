package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Tour;
import steadypull.road.PositionFix;
import steadypull.road.TourDrive;
import steadypull.road.TourRoutes;
import steadypull.road.memory.RouteSight;

/** The seconds of a tour that follows a route, with the heights that it tells every 150 m. */
final class RoutedSeconds {
  private static final double HEIGHT_METRES = 150;

  private RoutedSeconds() {}

  /** A route of its own errors for each drive. */
  static List<RoadSecond> of(TourDrive drive, Tour tour, long seed) {
    RouteSight sight = RouteSight.of(TourRoutes.wandering(tour, seed));
    List<RoadSecond> routed = new ArrayList<>();
    double since = 0;
    int next = 0;
    for (RoadSecond second : TourGrades.seconds(drive)) {
      double latitude = Double.NaN;
      double longitude = Double.NaN;
      for (;
          next < drive.samples().size()
              && drive.samples().get(next).timeMicros() < second.seconds() * 1e6;
          next++) {
        Sample sample = drive.samples().get(next);
        latitude = sample.channel().equals(Channels.LATITUDE) ? sample.value() : latitude;
        longitude = sample.channel().equals(Channels.LONGITUDE) ? sample.value() : longitude;
      }
      OptionalDouble height = OptionalDouble.empty();
      if (!Double.isNaN(latitude)) {
        PositionFix fix =
            new PositionFix(second.seconds(), latitude, longitude, second.altitudeMetres());
        height = since >= HEIGHT_METRES ? sight.routeHeight(fix) : height;
        sight.fixed(fix);
      }
      sight.moved(second.seconds(), second.metresPerSecond());
      since = height.isPresent() ? 0 : since + second.metresPerSecond();
      routed.add(height.isPresent() ? second.alongRoute(height.getAsDouble()) : second);
    }
    return routed;
  }
}
