package steadypull.vehicle.role;

/**
 * What a sensor read under boost, as means over seconds. Immutable.
 *
 * @param seconds how many; 0 or more. Old seconds count half when there are very many
 * @param celsius mean reading
 * @param outsideCelsius mean outside air at the same seconds
 * @param manifoldKilopascals mean absolute pressure at the same seconds
 * @param compressionKelvin mean of the least heating by compression at the same seconds
 */
record BoostMeans(
    double seconds,
    double celsius,
    double outsideCelsius,
    double manifoldKilopascals,
    double compressionKelvin) {
  static BoostMeans none() {
    return new BoostMeans(0, 0, 0, 0, 0);
  }

  BoostMeans with(double reading, Moment moment) {
    double before = seconds >= SensorRecord.MOST_SECONDS ? seconds / 2 : seconds;
    double share = 1 / (before + 1);
    return new BoostMeans(
        before + 1,
        mixed(celsius, reading, share),
        mixed(outsideCelsius, moment.outsideCelsius(), share),
        mixed(manifoldKilopascals, moment.manifoldKilopascals(), share),
        mixed(compressionKelvin, moment.compressionKelvin(), share));
  }

  private static double mixed(double mean, double value, double share) {
    return mean + share * (value - mean);
  }

  /** The rise over outside air, as a share of the least that compression gives. */
  double shareOfCompression() {
    return (celsius - outsideCelsius) / compressionKelvin;
  }

  /** The least temperature that compression gives. */
  double compressedCelsius() {
    return outsideCelsius + compressionKelvin;
  }
}
