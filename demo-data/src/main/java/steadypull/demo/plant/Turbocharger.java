package steadypull.demo.plant;

/**
 * Compressor with its boost control. The outlet temperature follows from pressure ratio and
 * efficiency: T2 = T1 (1 + (ratio^((k-1)/k) - 1) / efficiency), Heywood, Internal Combustion Engine
 * Fundamentals, chapter 6 (from memory), k = 1.4. Pressures absolute in kPa, temperatures in K.
 */
final class Turbocharger {
  private static final double EXPONENT = 0.4 / 1.4;
  private static final double GAS_CONSTANT_AIR = 287.05287; // ISO 2533:1975
  private static final double FILTER_LOSS_SHARE = 0.025; // at full flow; estimated

  private final double efficiency;
  private final double highestManifold;
  private final double highestCompression;
  private final double litresPerSecondPerRevolution;
  private final double fullFlow;
  private final Lag manifold;
  private double airFlow;
  private double outletKelvin;

  Turbocharger(Rig rig, Surroundings around) {
    efficiency = rig.of(RigTrait.COMPRESSOR_EFFICIENCY);
    highestManifold = rig.of(RigTrait.HIGHEST_MANIFOLD_KPA);
    highestCompression = rig.of(RigTrait.HIGHEST_COMPRESSION);
    litresPerSecondPerRevolution =
        rig.of(RigTrait.VOLUMETRIC_EFFICIENCY) * rig.of(RigTrait.DISPLACEMENT_L) / 2 / 60;
    fullFlow = 0.055 * rig.of(RigTrait.DISPLACEMENT_L); // kg/s, estimated
    manifold = new Lag(rig.of(RigTrait.BOOST_LAG_S), around.pressureKilopascals());
    outletKelvin = around.airCelsius() + 273.15;
  }

  /**
   * Moves the boost towards what the fuel asks for.
   *
   * @param wishedAirFlow kg/s that boost control wants
   * @param inletKelvin at the compressor
   * @param manifoldKelvin after the charge cooler
   */
  void step(
      double span,
      double wishedAirFlow,
      double engineSpeed,
      double ambient,
      double inletKelvin,
      double manifoldKelvin) {
    double swept = engineSpeed * litresPerSecondPerRevolution / 1000; // m3/s
    double perKilopascal = swept * 1000 / (GAS_CONSTANT_AIR * manifoldKelvin); // kg/s
    double ceiling = Math.min(highestManifold, highestCompression * inletPressure(ambient));
    double wished = Math.clamp(wishedAirFlow / perKilopascal, ambient + 4, ceiling);
    airFlow = perKilopascal * manifold.follow(wished, span);
    double ratio = Math.max(1, manifold.value() / inletPressure(ambient));
    outletKelvin = outletKelvin(inletKelvin, ratio, efficiencyAt(ratio));
  }

  /** The known formula by itself. */
  static double outletKelvin(double inletKelvin, double pressureRatio, double efficiency) {
    return inletKelvin * (1 + (Math.pow(pressureRatio, EXPONENT) - 1) / efficiency);
  }

  /** Efficiency falls away from the middle of the map (estimated). */
  private double efficiencyAt(double ratio) {
    double off = ratio - 2.2;
    return efficiency - 0.02 * off * off;
  }

  private double inletPressure(double ambient) {
    double flow = airFlow / fullFlow;
    return ambient * (1 - FILTER_LOSS_SHARE * Math.min(1.5, flow * flow));
  }

  double airFlow() {
    return airFlow;
  }

  double manifoldKilopascals() {
    return manifold.value();
  }

  double outletKelvin() {
    return outletKelvin;
  }
}
