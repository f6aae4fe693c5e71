package steadypull.thermal;

/** The courses that one channel may take: temperatures by draw and moment; where they settle. */
final class Courses {
  private final double nowCelsius;
  private final double[][] draws;
  private final double settledCelsius;

  /**
   * Keeps what is given.
   *
   * @param nowCelsius where all begin, degC
   * @param draws degC by draw, then by point of the horizon grid
   * @param settledCelsius where the middle one settles, degC
   */
  Courses(double nowCelsius, double[][] draws, double settledCelsius) {
    this.nowCelsius = nowCelsius;
    this.draws = draws;
    this.settledCelsius = settledCelsius;
  }

  double nowCelsius() {
    return nowCelsius;
  }

  /** degC by draw, then by point of the horizon grid. */
  double[][] draws() {
    return draws;
  }

  double settledCelsius() {
    return settledCelsius;
  }
}
