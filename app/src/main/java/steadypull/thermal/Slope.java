package steadypull.thermal;

import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/**
 * One way that the road ahead may go, as height over distance. Where knowledge ends, the grade of
 * its last stretch dies away into what a draw makes of the unknown. Immutable.
 */
final class Slope {
  /** What a road is like at its known end it stays for about so long (estimated). */
  private static final double MEMORY_METRES = 1500;

  private static final double LAST_STRETCH_METRES = 300;

  /** Main roads lie within so much of level two times in three (estimated). */
  private static final double UNKNOWN_GRADE = 0.02;

  /**
   * Errors of neighbouring pieces are mostly their own and cancel over a kilometre; so much of them
   * is common to all (estimated).
   */
  private static final double COMMON_ERROR = 0.5;

  private final double pieceMetres;
  private final double[] heights;
  private final double[] errors;
  private final double lastGrade;

  private Slope(double pieceMetres, double[] heights, double[] errors) {
    this.pieceMetres = pieceMetres;
    this.heights = heights;
    this.errors = errors;
    double known = pieceMetres * (heights.length - 1);
    double last = Math.min(LAST_STRETCH_METRES, known);
    this.lastGrade = last <= 0 ? 0 : (at(heights, known) - at(heights, known - last)) / last;
  }

  /** The certain stretch alone. */
  static Slope of(GradeProfile certain) {
    return of(certain, GradeProfile.none(certain.pieceMetres()));
  }

  /** The certain stretch and a branch that may follow it; pieces of equal length. */
  static Slope of(RoadAhead.Known road, RoadAhead.Branch branch) {
    return of(road.certain(), branch.profile());
  }

  private static Slope of(GradeProfile first, GradeProfile then) {
    double piece = first.pieceMetres();
    int size = first.size() + then.size();
    double[] heights = new double[size + 1];
    double[] errors = new double[size + 1];
    for (int i = 0; i < size; i++) {
      boolean isFirst = i < first.size();
      double grade = isFirst ? first.grade(i) : then.grade(i - first.size());
      double error = isFirst ? first.error(i) : then.error(i - first.size());
      heights[i + 1] = heights[i] + grade * piece;
      errors[i + 1] = errors[i] + error * piece;
    }
    return new Slope(piece, heights, errors);
  }

  /** Length of what is known, metres. */
  double knownMetres() {
    return pieceMetres * (heights.length - 1);
  }

  /**
   * Height gained from here to a distance ahead, metres.
   *
   * @param beside the draw's standard normal number for errors of what is known
   * @param unknown the same for what is not
   */
  double metresUp(double metres, double beside, double unknown) {
    double known = Math.min(metres, knownMetres());
    double up = at(heights, known) + COMMON_ERROR * beside * at(errors, known);
    double beyond = metres - known;
    if (beyond <= 0) {
      return up;
    }
    double remembered = MEMORY_METRES * (1 - Math.exp(-beyond / MEMORY_METRES));
    return up + lastGrade * remembered + UNKNOWN_GRADE * unknown * (beyond - remembered);
  }

  private double at(double[] sums, double metres) {
    double place = metres / pieceMetres;
    int before = Math.min((int) place, sums.length - 1);
    int after = Math.min(before + 1, sums.length - 1);
    return sums[before] + (place - before) * (sums[after] - sums[before]);
  }
}
