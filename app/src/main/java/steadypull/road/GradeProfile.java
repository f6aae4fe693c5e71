package steadypull.road;

import java.util.Arrays;

/** Grades along a stretch of road, one for each piece of equal length, nearest first. Immutable. */
public final class GradeProfile {
  private final double pieceMetres;
  private final double[] grades;
  private final double[] errors;

  /**
   * A stretch.
   *
   * @param pieceMetres length of each piece, above 0
   * @param grades mean grade of each piece in the direction of travel, fractions
   * @param errors standard deviation of each, fractions, as many
   */
  public GradeProfile(double pieceMetres, double[] grades, double[] errors) {
    if (!(pieceMetres > 0) || grades.length != errors.length) {
      throw new IllegalArgumentException(
          "A profile has pieces longer than 0 m with a grade and an error each, found %s m, %d, %d"
              .formatted(pieceMetres, grades.length, errors.length));
    }
    this.pieceMetres = pieceMetres;
    this.grades = grades.clone();
    this.errors = errors.clone();
  }

  /** A stretch of no length. */
  public static GradeProfile none(double pieceMetres) {
    return new GradeProfile(pieceMetres, new double[0], new double[0]);
  }

  /** Its first pieces, 0 to all. */
  public GradeProfile first(int pieces) {
    return new GradeProfile(
        pieceMetres, Arrays.copyOf(grades, pieces), Arrays.copyOf(errors, pieces));
  }

  /** What is left of it without its first pieces, 0 to all. */
  public GradeProfile from(int pieces) {
    return new GradeProfile(
        pieceMetres,
        Arrays.copyOfRange(grades, pieces, grades.length),
        Arrays.copyOfRange(errors, pieces, errors.length));
  }

  /** How many pieces there are. */
  public int size() {
    return grades.length;
  }

  /** Length of one piece, metres. */
  public double pieceMetres() {
    return pieceMetres;
  }

  /** Length of the stretch, metres. */
  public double lengthMetres() {
    return pieceMetres * grades.length;
  }

  /** Mean grade of a piece, counted from 0, as a fraction. */
  public double grade(int piece) {
    return grades[piece];
  }

  /** Standard deviation of that grade, a fraction. */
  public double error(int piece) {
    return errors[piece];
  }

  @Override
  public String toString() {
    return "GradeProfile[" + pieceMetres + " m each, " + Arrays.toString(grades) + "]";
  }
}
