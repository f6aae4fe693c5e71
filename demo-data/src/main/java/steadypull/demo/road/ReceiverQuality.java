package steadypull.demo.road;

/**
 * How well a satellite receiver sees its satellites.
 *
 * @param acrossMetres standard deviation of the wandering error east and north, each, 0 to 50
 * @param heightMetres standard deviation of the wandering error in height, 0 to 50
 * @param wanderSeconds after which an error has lost most of its memory, 1 to 3600
 * @param whiteMetres standard deviation from one second to the next, 0 to 20
 * @param missesPerHour seconds without a fix, one at a time, 0 to 3600
 * @param outagesPerHour longer stretches without one, 5 to 40 s each, 0 to 60
 * @param reflectionsPerHour stretches of 5 to 25 s in which walls reflect signals: 10 to 30 m
 *     beside, 0 to 60
 */
public record ReceiverQuality(
    double acrossMetres,
    double heightMetres,
    double wanderSeconds,
    double whiteMetres,
    double missesPerHour,
    double outagesPerHour,
    double reflectionsPerHour) {
  public ReceiverQuality {
    requireBetween("error across", acrossMetres, 0, 50);
    requireBetween("error in height", heightMetres, 0, 50);
    requireBetween("wandering", wanderSeconds, 1, 3600);
    requireBetween("noise", whiteMetres, 0, 20);
    requireBetween("misses", missesPerHour, 0, 3600);
    requireBetween("outages", outagesPerHour, 0, 60);
    requireBetween("reflections", reflectionsPerHour, 0, 60);
  }

  /**
   * Behind a windscreen: heights of two passes over 200 m at 80 km/h differ by 1.3 % of grade, as
   * open recordings of passes over one road did.
   */
  public static ReceiverQuality usual() {
    return new ReceiverQuality(2.2, 3.8, 60, 0.3, 30, 1.5, 1.5);
  }

  /** Among trees and walls. */
  public static ReceiverQuality poor() {
    return new ReceiverQuality(5, 8, 45, 1, 200, 6, 8);
  }

  /** What no receiver reaches. */
  public static ReceiverQuality perfect() {
    return new ReceiverQuality(0, 0, 60, 0, 0, 0, 0);
  }

  private static void requireBetween(String what, double value, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          "A receiver's %s lies between %s and %s, found %s"
              .formatted(what, lowest, highest, value));
    }
  }
}
