package steadypull.road.climb;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import steadypull.demo.road.Road;
import steadypull.demo.road.Tour;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/** Passes made of the invented country's truth, with and without errors; 72 km/h throughout. */
final class TourProfile {
  static final double STEP_METRES = 20;
  static final double METRES_PER_SECOND = 20;

  private TourProfile() {}

  /** The truth. */
  static RoadPass truth(Tour tour) {
    List<PassPoint> points = new ArrayList<>();
    for (double metres = 0; metres <= tour.length() - 200; metres += STEP_METRES) {
      Road.Place place = tour.at(metres);
      points.add(
          new PassPoint(
              metres / METRES_PER_SECOND,
              metres,
              Optional.of(new PassPoint.Place(place.latitude(), place.longitude(), 2.5)),
              place.altitude(),
              place.gradePercent() / 100,
              0.002));
    }
    return new RoadPass(points);
  }

  /** Without any place. */
  static RoadPass unplaced(RoadPass pass) {
    return new RoadPass(
        pass.points().stream()
            .map(point -> point(point, point.metres(), point.heightMetres(), point.grade()))
            .map(TourProfile::withoutPlace)
            .toList());
  }

  /** With grades that err, and heights that follow them. */
  static RoadPass noisy(RoadPass pass, double error, double lastsMetres, long seed) {
    Random random = new Random(seed);
    double keep = Math.exp(-STEP_METRES / lastsMetres);
    double now = error * random.nextGaussian();
    double height = 0;
    List<PassPoint> points = new ArrayList<>();
    for (PassPoint point : pass.points()) {
      points.add(point(point, point.metres(), point.heightMetres() + height, point.grade() + now));
      height += now * STEP_METRES;
      now = keep * now + Math.sqrt(1 - keep * keep) * error * random.nextGaussian();
    }
    return new RoadPass(points);
  }

  /** The same way driven backwards. */
  static RoadPass reversed(RoadPass pass) {
    double length = pass.points().getLast().metres();
    List<PassPoint> points = new ArrayList<>();
    for (PassPoint point : pass.points().reversed()) {
      points.add(point(point, length - point.metres(), point.heightMetres(), -point.grade()));
    }
    return new RoadPass(points);
  }

  /** The road upside down. */
  static RoadPass upsideDown(RoadPass pass) {
    return new RoadPass(
        pass.points().stream()
            .map(point -> point(point, point.metres(), -point.heightMetres(), -point.grade()))
            .toList());
  }

  /** With level road before and after. */
  static RoadPass amongLevelRoad(RoadPass pass, double before, double after) {
    List<PassPoint> points = new ArrayList<>();
    PassPoint first = pass.points().getFirst();
    for (double metres = 0; metres < before; metres += STEP_METRES) {
      points.add(withoutPlace(point(first, metres, first.heightMetres(), 0)));
    }
    pass.points()
        .forEach(p -> points.add(point(p, p.metres() + before, p.heightMetres(), p.grade())));
    PassPoint last = points.getLast();
    for (double metres = STEP_METRES; metres < after; metres += STEP_METRES) {
      points.add(withoutPlace(point(last, last.metres() + metres, last.heightMetres(), 0)));
    }
    return new RoadPass(points);
  }

  /** Parted by a gap; the second part's metres do not count it, nor do its heights if so said. */
  static List<RoadPass> parted(RoadPass pass, double from, double to, boolean keepsHeights) {
    List<PassPoint> second = pass.points().stream().filter(point -> point.metres() >= to).toList();
    double datum = keepsHeights ? 0 : second.getFirst().heightMetres();
    return List.of(
        new RoadPass(pass.points().stream().filter(point -> point.metres() <= from).toList()),
        new RoadPass(
            second.stream()
                .map(
                    p ->
                        new PassPoint(
                            p.seconds(),
                            p.metres() - (to - from),
                            p.place(),
                            p.heightMetres() - datum,
                            p.grade(),
                            p.gradeError()))
                .toList()));
  }

  static RoadPass part(RoadPass pass, double from, double to) {
    List<PassPoint> points = new ArrayList<>(pass.points());
    points.removeIf(point -> point.metres() < from || point.metres() > to);
    return new RoadPass(Collections.unmodifiableList(points));
  }

  private static PassPoint point(PassPoint like, double metres, double height, double grade) {
    return new PassPoint(
        metres / METRES_PER_SECOND, metres, like.place(), height, grade, like.gradeError());
  }

  private static PassPoint withoutPlace(PassPoint like) {
    return new PassPoint(
        like.seconds(),
        like.metres(),
        Optional.empty(),
        like.heightMetres(),
        like.grade(),
        like.gradeError());
  }
}
