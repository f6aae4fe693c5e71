package steadypull.thermal;

/**
 * What goes on for ever on a climb. Immutable.
 *
 * @param metresPerSecond road speed, above 0
 * @param rpmPerMetrePerSecond engine speed for each m/s, in the gear that is kept; above 0
 * @param outsideCelsius outside air
 * @param kilopascals its pressure, absolute
 * @param headroomKelvin that every channel shall keep to its limit, 0 or more
 */
public record SteadyLoad(
    double metresPerSecond,
    double rpmPerMetrePerSecond,
    double outsideCelsius,
    double kilopascals,
    double headroomKelvin) {
  public SteadyLoad {
    if (!(metresPerSecond > 0 && rpmPerMetrePerSecond > 0 && headroomKelvin >= 0)) {
      throw new IllegalArgumentException(
          "A steady load has a speed and a gear above 0 and a headroom of 0 or more, found %s m/s,"
                  .formatted(metresPerSecond)
              + " %s, %s K".formatted(rpmPerMetrePerSecond, headroomKelvin));
    }
  }

  /** The same at another speed. */
  SteadyLoad at(double otherMetresPerSecond) {
    return new SteadyLoad(
        otherMetresPerSecond, rpmPerMetrePerSecond, outsideCelsius, kilopascals, headroomKelvin);
  }

  /** The same in other air. */
  SteadyLoad in(double otherCelsius) {
    return new SteadyLoad(
        metresPerSecond, rpmPerMetrePerSecond, otherCelsius, kilopascals, headroomKelvin);
  }

  double engineRpm() {
    return metresPerSecond * rpmPerMetrePerSecond;
  }
}
