package steadypull.vehicle.role;

/** Why a sensor's place cannot be told, or cannot be told yet. A closed set. */
public sealed interface Missing {

  /** The vehicle has not answered for any sensor of the kind. */
  record NoSensor() implements Missing {}

  /**
   * Too little boost was seen.
   *
   * @param seconds how much was, 0 or more
   */
  record MoreBoost(double seconds) implements Missing {}

  /** Boost hardly varied while the vehicle moved. */
  record VaryingBoost() implements Missing {}

  /**
   * None is as hot under boost as compression makes air.
   *
   * @param hottestSignal the one that comes nearest
   */
  record NoneHotEnough(String hottestSignal, double celsius, double compressedCelsius)
      implements Missing {}

  /** None lies between compressed air and outside air and warms with boost. */
  record NoneBetween() implements Missing {}

  /** The engine was never warm. */
  record WarmEngine() implements Missing {}

  /** The water sensors do not differ enough to tell two circuits apart. */
  record NoOtherWater() implements Missing {}

  /**
   * A sensor's water goes its own way, but the vehicle is described as cooling its charge air by
   * air.
   */
  record LayoutSaysAir(String signal, double celsius, double engineCelsius) implements Missing {}

  /** One exhaust sensor alone does not tell its side of the turbine. */
  record OnlyOneExhaust(String signal) implements Missing {}

  /**
   * The exhaust sensors do not differ by what a turbine takes out.
   *
   * @param dropKelvin by how much the two hottest differ
   * @param turbineKelvin the least that a turbine takes out at that boost
   */
  record NoTurbineBetween(
      String hottestSignal, String nextSignal, double dropKelvin, double turbineKelvin)
      implements Missing {}

  /** No further exhaust sensor is clearly slower. */
  record NoSlowExhaust() implements Missing {}
}
