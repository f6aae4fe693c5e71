package steadypull.compare;

/**
 * What one draw of the unknowns says both sides would have done under the common load. Not to be
 * written to.
 */
final class Drawn {
  private final BothSides<DrawnSide> sides;
  private final double[] delays;
  private final double formKelvin;

  private Drawn(BothSides<DrawnSide> sides, double[] delays, double formKelvin) {
    this.sides = sides;
    this.delays = delays;
    this.formKelvin = formKelvin;
  }

  DrawnSide of(Side side) {
    return sides.of(side);
  }

  /** How much cooler after at a second, K. */
  double gain(int second) {
    return sides.before().celsius(second) - sides.after().celsius(second) + formKelvin;
  }

  double settledGain() {
    return sides.before().settled() - sides.after().settled() + formKelvin;
  }

  /** The part of the gain at a second that more heat given off makes, K. */
  double lasts(int second) {
    return gain(second) - delays[second];
  }

  /** The part of it that a greater heat capacity makes, K. */
  double delays(int second) {
    return delays[second];
  }

  /**
   * Runs the common load with the C and UA of either side in turn. What C does is what it does with
   * the UA of before and with that of after, on average, so that no order of fitting the two counts
   * (Shapley, A value for n-person games, 1953).
   *
   * @param drive the unknowns under the common load
   */
  static Drawn of(CommonDrive drive) {
    double[] before = drive.course(Side.BEFORE, Side.BEFORE);
    double[] after = drive.course(Side.AFTER, Side.AFTER);
    double[] moreBefore = drive.course(Side.AFTER, Side.BEFORE);
    double[] lessAfter = drive.course(Side.BEFORE, Side.AFTER);
    double[] delays = new double[before.length];
    for (int i = 0; i < delays.length; i++) {
      delays[i] =
          ((before[i] - moreBefore[i]) + (lessAfter[i] - after[i])) / 2
              + drive.heat().besideKelvin();
    }
    return new Drawn(
        new BothSides<>(drive.side(Side.BEFORE, before), drive.side(Side.AFTER, after)),
        delays,
        drive.heat().formKelvin());
  }
}
