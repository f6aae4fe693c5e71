package steadypull.vehicle;

import java.util.Locale;
import java.util.Objects;

/**
 * A tyre by the designation on its side wall, and how far a wheel rolls on it. Immutable.
 *
 * @param designation as it was written, blanks stripped; without load index and speed letter if it
 *     had none
 * @param freeDiameterMetres of the unloaded tyre
 * @param isRadial whether its cords run radially; nearly all do
 * @param spread share by which makers differ from the designation, above 0
 */
public record TyreSize(
    String designation, double freeDiameterMetres, boolean isRadial, double spread) {
  /** Rolling circumference over free diameter of a radial tyre (ETRTO; from memory). */
  private static final double RADIAL_FACTOR = 3.05;

  /** The same of a diagonal tyre (ETRTO; from memory). */
  private static final double DIAGONAL_FACTOR = 2.99;

  private static final double LEAST_DIAMETER = 0.42;
  private static final double MOST_DIAMETER = 1.6;

  public TyreSize {
    Objects.requireNonNull(designation);
    if (!(freeDiameterMetres >= LEAST_DIAMETER && freeDiameterMetres <= MOST_DIAMETER)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "expected a tyre of %.2f to %.2f m diameter, found \"%s\" of %.2f m",
              LEAST_DIAMETER,
              MOST_DIAMETER,
              designation,
              freeDiameterMetres));
    }
  }

  /**
   * Reads a designation such as {@code 275/70R18}, {@code LT275/70R18 123/120S}, {@code 7.50R16},
   * {@code 11R22.5} or {@code 35x12.50R17LT}. Throws IllegalArgumentException, with what was
   * expected and found, for anything else.
   */
  public static TyreSize of(String text) {
    return TyreDesignation.read(text.strip())
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "expected a tyre size as the side wall says it, such as 275/70R18, LT235/85R16,"
                        + " 7.50R16, 11R22.5 or 35x12.50R17, found \""
                        + text
                        + "\""));
  }

  /** Radius at which a wheel rolls under load, m: its circumference over 2 pi. */
  public double rollingRadiusMetres() {
    return rollingCircumferenceMetres() / (2 * Math.PI);
  }

  /** What a wheel covers in one turn, m. */
  public double rollingCircumferenceMetres() {
    return freeDiameterMetres * (isRadial ? RADIAL_FACTOR : DIAGONAL_FACTOR);
  }
}
