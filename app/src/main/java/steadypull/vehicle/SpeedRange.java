package steadypull.vehicle;

/**
 * The speeds that advice may name.
 *
 * @param lowestKilometresPerHour 20 or more
 * @param highestKilometresPerHour above the lowest, at most 130
 */
public record SpeedRange(double lowestKilometresPerHour, double highestKilometresPerHour) {
  /** Used until the owner says otherwise (common practice, no source). */
  public static final SpeedRange DEFAULT = new SpeedRange(60, 90);

  public SpeedRange {
    if (!(lowestKilometresPerHour >= 20
        && lowestKilometresPerHour < highestKilometresPerHour
        && highestKilometresPerHour <= 130)) {
      throw new IllegalArgumentException(
          "Advisable speeds rise from at least 20 to at most 130 km/h, found %s to %s"
              .formatted(lowestKilometresPerHour, highestKilometresPerHour));
    }
  }
}
