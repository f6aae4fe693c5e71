package steadypull.drive;

import java.util.Arrays;
import steadypull.road.GradeProfile;

/**
 * Where on a route a vehicle is of which only the metres driven and the grades it climbs are known:
 * places farther on and farther back than its metres say are weighed by how well the grades there
 * agree with the ones it shows, under each of some scales of its distance (a point-mass filter:
 * Bucy and Senne, "Digital synthesis of non-linear filters", Automatica 7, 1971, 287-298). What the
 * vehicle shows is off by its mass and the wind for kilometres, so each place is granted a level of
 * its own. Pipeline thread only.
 */
final class PlaceByGrades {
  private static final double STEP_METRES = 10;

  /** Places up to so far to either side are weighed. */
  private static final int MOST_STEPS = 100;

  private static final int PLACES = 2 * MOST_STEPS + 1;

  /** The drive begins so near to the route's first point (estimated). */
  private static final double START_METRES = 40;

  /** What the wheels tell is so much wrong all along: tyres and speed (common practice). */
  private static final double[] SCALES = {0.97, 0.98, 0.99, 1, 1.01, 1.02, 1.03};

  private static final double SCALE_SPREAD = 0.01;

  /** And by chance so much more in a kilometre, m (estimated). */
  private static final double DRIFT_METRES = 8;

  /** Grades are compared every so many metres. */
  private static final double COMPARED_METRES = 25;

  /** So far apart, two comparisons tell something of their own (estimated). */
  private static final double OWN_METRES = 100;

  /** What the vehicle shows and what a file's elevations say differ by that (estimated). */
  private static final double GRADE_ERROR = 0.012;

  /** The grade shown was driven so long ago: a filter that looks back takes some 2 to 3 s. */
  private static final double LATE_METRES = 50;

  private static final double MOST_SURPRISE = 3;
  private static final double MOST_ASIDE = 0.3;

  /** Mass and wind stay as they are for so long. */
  private static final double LEVEL_METRES = 4000;

  private final GradeProfile route;
  private final double[][] weights = new double[SCALES.length][PLACES];
  private final double[][] levels = new double[SCALES.length][PLACES];
  private double odometer;
  private double untilCompared = COMPARED_METRES;
  private double gradeSum;
  private int grades;

  /** A vehicle at the beginning of a route. */
  PlaceByGrades(GradeProfile route) {
    this.route = route;
    for (int scale = 0; scale < SCALES.length; scale++) {
      double wrong = (SCALES[scale] - 1) / SCALE_SPREAD;
      for (int place = 0; place < PLACES; place++) {
        double spreads = aside(place) / START_METRES;
        weights[scale][place] = Math.exp(-(spreads * spreads + wrong * wrong) / 2);
      }
    }
  }

  private static double aside(int place) {
    return (place - MOST_STEPS) * STEP_METRES;
  }

  /** Takes metres driven and the grade shown meanwhile, if one was. */
  void moved(double metres) {
    odometer += metres;
    untilCompared -= metres;
    if (untilCompared <= 0) {
      compare();
      spread(COMPARED_METRES - untilCompared);
      untilCompared = COMPARED_METRES;
    }
  }

  /** Takes the grade that the vehicle shows, a fraction. */
  void climbing(double grade) {
    gradeSum += grade;
    grades++;
  }

  private void compare() {
    if (grades > 0) {
      double grade = gradeSum / grades;
      for (int scale = 0; scale < SCALES.length; scale++) {
        for (int place = 0; place < PLACES; place++) {
          weigh(scale, place, grade);
        }
      }
      gradeSum = 0;
      grades = 0;
    }
    double sum = Arrays.stream(weights).flatMapToDouble(Arrays::stream).sum();
    for (double[] each : weights) {
      Arrays.setAll(each, place -> each[place] / sum);
    }
  }

  private void weigh(int scale, int place, double grade) {
    int piece =
        (int)
            Math.floor(
                (odometer * SCALES[scale] + aside(place) - LATE_METRES) / route.pieceMetres());
    if (piece < 0 || piece >= route.size() || !RouteByDistance.isTold(route, piece)) {
      return;
    }
    double beside = grade - route.grade(piece) - levels[scale][place];
    double surprise =
        Math.min(MOST_SURPRISE, Math.abs(beside) / Math.hypot(GRADE_ERROR, route.error(piece)));
    weights[scale][place] *= Math.exp(-surprise * surprise / 2 * COMPARED_METRES / OWN_METRES);
    levels[scale][place] += beside * COMPARED_METRES / LEVEL_METRES;
  }

  /** A random walk: to either neighbour with the probability that makes the variance right. */
  private void spread(double metres) {
    double variance = DRIFT_METRES * DRIFT_METRES * metres / 1000;
    double aside = Math.min(MOST_ASIDE, variance / (2 * STEP_METRES * STEP_METRES));
    for (double[] each : weights) {
      double[] before = each.clone();
      for (int place = 0; place < PLACES; place++) {
        double left = before[Math.max(0, place - 1)];
        double right = before[Math.min(PLACES - 1, place + 1)];
        each[place] = before[place] * (1 - 2 * aside) + aside * (left + right);
      }
    }
  }

  /** Metres of the route, as the metres driven and the grades say together. */
  double metres() {
    double sum = 0;
    double weight = 0;
    for (int scale = 0; scale < SCALES.length; scale++) {
      for (int place = 0; place < PLACES; place++) {
        sum += weights[scale][place] * (odometer * SCALES[scale] + aside(place));
        weight += weights[scale][place];
      }
    }
    return sum / weight;
  }
}
