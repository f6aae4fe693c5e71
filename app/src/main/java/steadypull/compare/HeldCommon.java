package steadypull.compare;

import java.util.Optional;

/** The common load as one side's cooler takes it in one draw, held from the onset on. Immutable. */
final class HeldCommon implements LoadCourse {
  /** Between these the heat of charge air is straight in the store's temperature within 1 %. */
  private static final double COLD_ABOVE_OUTSIDE = 10;

  private static final double HOT_ABOVE_OUTSIDE = 70;

  private final CommonLoad common;
  private final int seconds;
  private final double arrives;
  private final double logSpeed;
  private final double logDensity;
  private final double wattsAtOutside;
  private final double wattsPerKelvin;

  HeldCommon(CommonLoad common, Side side, HeatDraw heat, int seconds) {
    this.common = common;
    this.seconds = seconds;
    arrives = heat.arrivesSeconds();
    logSpeed = LoadCourse.logOfSpeed(common.metresPerSecond());
    logDensity = LoadCourse.logOfDensity(common.pressureKilopascals(), common.outsideCelsius());
    Optional<ChargeAirHeat> charge = common.charge(side, heat);
    double efficiency = heat.compressorEfficiency();
    double cold = common.outsideCelsius() + COLD_ABOVE_OUTSIDE;
    double hot = common.outsideCelsius() + HOT_ABOVE_OUTSIDE;
    double atCold = charge.map(air -> air.watts(cold, efficiency)).orElse(common.heatWatts());
    double atHot = charge.map(air -> air.watts(hot, efficiency)).orElse(common.heatWatts());
    wattsPerKelvin = (atHot - atCold) / (hot - cold);
    wattsAtOutside = atCold - wattsPerKelvin * COLD_ABOVE_OUTSIDE;
  }

  @Override
  public int firstSecond() {
    return 0;
  }

  @Override
  public int endSecond() {
    return seconds;
  }

  @Override
  public double heatWatts(int second, double celsius) {
    double arrived = common.charge().isPresent() ? -Math.expm1(-(second + 0.5) / arrives) : 1;
    return arrived * (wattsAtOutside + wattsPerKelvin * (celsius - common.outsideCelsius()));
  }

  @Override
  public double outsideCelsius(int second) {
    return common.outsideCelsius();
  }

  @Override
  public double logSpeed(int second) {
    return logSpeed;
  }

  @Override
  public double logDensity(int second) {
    return logDensity;
  }

  @Override
  public boolean isOnRollers() {
    return common.isOnRollers();
  }
}
