package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadypull.road.GradeProfile;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.Route;

/**
 * A route made ready to be followed: where it leads, and which grades its own elevations tell.
 * Immutable, any thread.
 */
public final class RouteLine {
  /** A grade that may be wrong by more than that is not told (our choice). */
  public static final double LARGEST_ERROR = 0.05;

  private static final double PIECE_METRES = 50;

  private static final double LONGEST_BRIDGE_METRES = 200;

  /** What a grade may change over so short a stretch (estimated). */
  private static final double BRIDGED_ERROR = 0.005;

  private final List<RoadPass> passes;

  /**
   * Grades along a route from wherever they are known best. Handed from the thread that made them
   * to the one that looks ahead; immutable then.
   */
  public static final class Grades {
    private final RoadGraph forwards;
    private final RoadGraph backwards;

    private Grades(RoadGraph forwards, RoadGraph backwards) {
      this.forwards = forwards;
      this.backwards = backwards;
    }

    RoadGraph forwards() {
      return forwards;
    }

    RoadGraph backwards() {
      return backwards;
    }
  }

  private RouteLine(List<RoadPass> passes) {
    this.passes = List.copyOf(passes);
  }

  /** Makes a route ready. */
  public static RouteLine of(Route route) {
    return new RouteLine(RoutePasses.of(route));
  }

  /** Somebody who follows it with its own elevations, from wherever they come upon it. */
  public RouteSight sight() {
    return RouteSight.of(passes);
  }

  /** How much of the route can be followed, metres; 0 where its points are too far apart. */
  public double lengthMetres() {
    return passes.stream().mapToDouble(RoadPass::lengthMetres).sum();
  }

  /**
   * The share of the route, 0 to 1, that can be followed along which its own elevations tell the
   * grade.
   */
  public double gradedShare() {
    long told = 0;
    long all = 0;
    for (RoadPass pass : passes) {
      all += pass.points().size();
      told += pass.points().stream().filter(point -> isTold(point.gradeError())).count();
    }
    return all == 0 ? 0 : (double) told / all;
  }

  /**
   * The grades of the whole route from its first point on, with its own elevations, by metres
   * alone. A piece of which no grade is told has an error of {@link #LARGEST_ERROR} or more.
   */
  public GradeProfile profile() {
    List<PassPoint> points = passes.stream().flatMap(pass -> pass.points().stream()).toList();
    double from = points.isEmpty() ? 0 : points.getFirst().metres();
    int pieces = points.isEmpty() ? 0 : 1 + piece(points.getLast().metres() - from);
    double[] grades = new double[pieces];
    double[] errors = new double[pieces];
    int[] counts = new int[pieces];
    for (PassPoint point : points) {
      int piece = piece(point.metres() - from);
      counts[piece]++;
      grades[piece] += (point.grade() - grades[piece]) / counts[piece];
      errors[piece] = Math.max(errors[piece], point.gradeError());
    }
    Arrays.setAll(errors, piece -> counts[piece] == 0 ? LARGEST_ERROR : errors[piece]);
    return new GradeProfile(PIECE_METRES, grades, errors);
  }

  private static int piece(double metres) {
    return (int) (metres / PIECE_METRES);
  }

  /**
   * The grades along the route, both ways, where it leads along roads that are remembered, and its
   * own elsewhere: at each place whichever errs less. Takes some milliseconds for each 10 km that
   * are remembered.
   *
   * @param memory used by nobody else meanwhile
   */
  public Grades gradedBy(RoadMemory memory) {
    Alignment alignment = new Alignment(memory.graph());
    return new Grades(graded(passes, alignment), graded(RouteSight.backwards(passes), alignment));
  }

  private static RoadGraph graded(List<RoadPass> passes, Alignment alignment) {
    List<RoadPass> graded = new ArrayList<>();
    for (RoadPass pass : passes) {
      for (PassCurve curve : PassCurve.of(pass)) {
        graded.add(graded(curve.spots(), alignment.of(curve)));
      }
    }
    return RouteDirection.chain(graded);
  }

  private static RoadPass graded(
      List<PassCurve.Spot> spots, List<Optional<Alignment.Place>> remembered) {
    List<PassPoint> points = new ArrayList<>(spots.size());
    for (int i = 0; i < spots.size(); i++) {
      PassCurve.Spot spot = spots.get(i);
      Optional<Alignment.Place> better =
          remembered.get(i).filter(place -> error(place) < spot.gradeError());
      points.add(
          better
              .map(place -> point(spot, place.stretch().grade(place.share()), error(place)))
              .orElse(point(spot, spot.grade(), spot.gradeError())));
    }
    return new RoadPass(bridged(points));
  }

  /** Where a short stretch alone is not told, what is told around it stands in. */
  private static List<PassPoint> bridged(List<PassPoint> points) {
    List<PassPoint> bridged = new ArrayList<>(points);
    int before = -1;
    for (int i = 0; i < points.size(); i++) {
      if (isTold(points.get(i).gradeError())) {
        if (before >= 0
            && points.get(i).metres() - points.get(before).metres() <= LONGEST_BRIDGE_METRES) {
          for (int gap = before + 1; gap < i; gap++) {
            bridged.set(gap, between(points.get(before), points.get(gap), points.get(i)));
          }
        }
        before = i;
      }
    }
    return bridged;
  }

  private static PassPoint between(PassPoint before, PassPoint here, PassPoint after) {
    double share = (here.metres() - before.metres()) / (after.metres() - before.metres());
    return new PassPoint(
        here.seconds(),
        here.metres(),
        here.place(),
        here.heightMetres(),
        before.grade() + share * (after.grade() - before.grade()),
        BRIDGED_ERROR + Math.max(before.gradeError(), after.gradeError()));
  }

  private static PassPoint point(PassCurve.Spot spot, double grade, double error) {
    return new PassPoint(
        spot.seconds(),
        spot.metres(),
        Optional.of(
            new PassPoint.Place(
                spot.latitudeDegrees(), spot.longitudeDegrees(), spot.errorMetres())),
        0,
        grade,
        error);
  }

  private static double error(Alignment.Place place) {
    return place.stretch().gradeError(place.share());
  }

  private static boolean isTold(double gradeError) {
    return gradeError < SightCosts.UNTOLD_GRADE_ERROR;
  }
}
