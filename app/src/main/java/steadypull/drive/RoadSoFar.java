package steadypull.drive;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.GradeProfile;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbFinder;

/**
 * The grades of the last kilometres, so that a climb is seen whole that the vehicle is on. Pipeline
 * thread only.
 */
final class RoadSoFar {
  /** No longer climb is shown whole (our choice). */
  private static final double KEPT_METRES = 15_000;

  private static final double POINT_METRES = 20;

  /** What a climb of these points is drawn in, m. */
  private static final double PIECE_METRES = 50;

  /** The finder wants an error, and does not weigh by it. */
  private static final double SOME_ERROR = 0.01;

  private final ArrayDeque<PassPoint> points = new ArrayDeque<>();
  private double metres;
  private double heightMetres;

  /**
   * Adds a second of driving.
   *
   * @param seconds since the trip began
   * @param driven since the last second, m, 0 or more
   * @param grade a fraction
   */
  void moved(double seconds, double driven, double grade) {
    metres += driven;
    heightMetres += driven * grade;
    if (points.isEmpty() || metres - points.getLast().metres() >= POINT_METRES) {
      points.addLast(point(seconds, metres, heightMetres, grade));
    }
    while (points.getFirst().metres() < metres - KEPT_METRES) {
      points.removeFirst();
    }
  }

  /** The climb that the vehicle is on or comes to next on what is certain of the road ahead. */
  Optional<ClimbAhead> climb(GradeProfile certain) {
    List<PassPoint> all = new ArrayList<>(points);
    double ahead = metres;
    double height = heightMetres;
    double seconds = all.isEmpty() ? 0 : all.getLast().seconds();
    for (int piece = 0; piece < certain.size(); piece++) {
      ahead += certain.pieceMetres();
      height += certain.pieceMetres() * certain.grade(piece);
      all.add(point(++seconds, ahead, height, certain.grade(piece)));
    }
    return all.size() < 2 ? Optional.empty() : next(all);
  }

  private Optional<ClimbAhead> next(List<PassPoint> all) {
    return ClimbFinder.find(List.of(new RoadPass(all))).stream()
        .filter(climb -> climb.startMetres() + climb.lengthMetres() > metres)
        .findFirst()
        .map(climb -> seen(climb, all));
  }

  private ClimbAhead seen(Climb climb, List<PassPoint> all) {
    int pieces = (int) Math.max(1, Math.round(climb.lengthMetres() / PIECE_METRES));
    double piece = climb.lengthMetres() / pieces;
    double from = climb.startMetres();
    double[] heights = heights(all, from, piece, pieces + 1);
    double[] grades = new double[pieces];
    double[] errors = new double[pieces];
    for (int i = 0; i < pieces; i++) {
      grades[i] = (heights[i + 1] - heights[i]) / piece;
      errors[i] = SOME_ERROR;
    }
    double toStart = Math.max(climb.startMetres() - metres, -climb.lengthMetres());
    return new ClimbAhead(
        new GradeProfile(piece, grades, errors), toStart, climb.ended() == Climb.End.ROAD);
  }

  /** Heights at equal distances, found in one walk along the points. */
  private static double[] heights(List<PassPoint> points, double from, double apart, int count) {
    double[] heights = new double[count];
    int next = 1;
    for (int i = 0; i < count; i++) {
      double at = from + i * apart;
      while (next < points.size() - 1 && points.get(next).metres() < at) {
        next++;
      }
      heights[i] = between(points.get(next - 1), points.get(next), at);
    }
    return heights;
  }

  private static double between(PassPoint here, PassPoint there, double at) {
    double share = (at - here.metres()) / Math.max(1e-6, there.metres() - here.metres());
    return here.heightMetres()
        + Math.clamp(share, 0, 1) * (there.heightMetres() - here.heightMetres());
  }

  private static PassPoint point(double seconds, double metres, double height, double grade) {
    return new PassPoint(seconds, metres, Optional.empty(), height, grade, SOME_ERROR);
  }
}
