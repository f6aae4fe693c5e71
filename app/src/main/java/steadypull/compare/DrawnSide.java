package steadypull.compare;

/** What one draw of the unknowns says of one side under the common load. Not to be written to. */
final class DrawnSide {
  private final double[] course;
  private final double settled;
  private final double joules;
  private final double watts;
  private final double rejectedWatts;
  private final double effectiveness;

  /**
   * Of a side.
   *
   * @param course degC, a value a second from the onset
   * @param settled degC
   * @param joules heat capacity, J/K
   * @param watts conductance, W/K
   * @param rejectedWatts heat given off where it settles, W
   * @param effectiveness of a charge cooler, 0 to 1; NaN where there is none
   */
  DrawnSide(
      double[] course,
      double settled,
      double joules,
      double watts,
      double rejectedWatts,
      double effectiveness) {
    this.course = course;
    this.settled = settled;
    this.joules = joules;
    this.watts = watts;
    this.rejectedWatts = rejectedWatts;
    this.effectiveness = effectiveness;
  }

  /** Temperature at a second since the onset, degC. */
  double celsius(int second) {
    return course[second];
  }

  /** How many seconds the course has. */
  int seconds() {
    return course.length;
  }

  double settled() {
    return settled;
  }

  double joules() {
    return joules;
  }

  double watts() {
    return watts;
  }

  double rejectedWatts() {
    return rejectedWatts;
  }

  double effectiveness() {
    return effectiveness;
  }
}
