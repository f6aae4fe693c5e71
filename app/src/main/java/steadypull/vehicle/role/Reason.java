package steadypull.vehicle.role;

/**
 * Why a sensor is believed to sit in a place, with the figures that say so. Temperatures in degC,
 * differences in K, pressures in kPa absolute. A closed set.
 */
public sealed interface Reason {

  /**
   * As hot under boost as compression makes air: before the charge cooler.
   *
   * @param celsius mean reading under boost
   * @param manifoldKilopascals mean pressure meanwhile
   * @param outsideCelsius mean outside air meanwhile
   * @param compressedCelsius the least that outside air is heated to at that pressure
   */
  record HotAsCompressed(
      double celsius, double manifoldKilopascals, double outsideCelsius, double compressedCelsius)
      implements Reason {}

  /**
   * Warmer with boost, but far under what compression makes: after the charge cooler.
   *
   * @param kelvinPer100Kilopascals by how much it warms with boost
   */
  record CooledAfterCompression(
      double celsius,
      double manifoldKilopascals,
      double outsideCelsius,
      double compressedCelsius,
      double kelvinPer100Kilopascals)
      implements Reason {}

  /**
   * Water that warms with boost and goes its own way: a circuit of its own.
   *
   * @param celsius mean reading under boost
   * @param engineCelsius mean of the engine's water meanwhile
   * @param apartKelvin mean distance between the two with a warm engine
   */
  record OwnCircuit(double celsius, double engineCelsius, double apartKelvin) implements Reason {}

  /**
   * The hottest water there is: the engine's.
   *
   * @param highestCelsius the hottest that it was
   */
  record HottestWater(double highestCelsius) implements Reason {}

  /**
   * Hotter than the next sensor by what a turbine takes out that drives the compressor.
   *
   * @param celsius mean reading under boost
   * @param dropKelvin how much cooler the next sensor is
   * @param nextSignal key of that sensor
   */
  record BeforeTurbine(double celsius, double dropKelvin, String nextSignal) implements Reason {}

  /** The other side of that drop. */
  record AfterTurbine(double celsius, double dropKelvin, String hotterSignal) implements Reason {}

  /**
   * Far slower than the sensor after the turbine: behind something heavy.
   *
   * @param slowness how many times less quick it is; above 1
   */
  record BehindHeavyPart(double celsius, double slowness) implements Reason {}
}
