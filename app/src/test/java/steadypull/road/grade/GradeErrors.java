package steadypull.road.grade;

/**
 * Errors made and told. Immutable.
 *
 * @param count of seconds
 * @param madeSquares sum of squared errors
 * @param toldSquares sum of the variances that were told
 * @param withinTwoCount seconds whose error is under two of its standard deviations
 */
record GradeErrors(long count, double madeSquares, double toldSquares, long withinTwoCount) {
  static final GradeErrors NONE = new GradeErrors(0, 0, 0, 0);

  GradeErrors with(double made, double told) {
    return new GradeErrors(
        count + 1,
        madeSquares + made * made,
        toldSquares + told * told,
        withinTwoCount + (Math.abs(made) < 2 * told ? 1 : 0));
  }

  GradeErrors with(GradeErrors other) {
    return new GradeErrors(
        count + other.count,
        madeSquares + other.madeSquares,
        toldSquares + other.toldSquares,
        withinTwoCount + other.withinTwoCount);
  }

  /** Root mean square, per cent of grade. */
  double made() {
    return 100 * Math.sqrt(madeSquares / count);
  }

  /** The error told over the error made, both root mean squares. */
  double toldByMade() {
    return Math.sqrt(toldSquares / madeSquares);
  }

  double withinTwo() {
    return withinTwoCount / (double) count;
  }
}
