package steadypull.report;

/**
 * One figure of both sides, as text. Immutable.
 *
 * @param label what it is
 * @param before of the side before; a dash where it cannot be told
 * @param after likewise
 */
public record FigureRow(String label, String before, String after) {
  /** Whether it tells anything of either side. */
  boolean tells() {
    return !before.equals(FigureText.UNKNOWN) || !after.equals(FigureText.UNKNOWN);
  }
}
