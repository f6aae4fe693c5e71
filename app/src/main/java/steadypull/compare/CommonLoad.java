package steadypull.compare;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import steadypull.channel.Channels;
import steadypull.road.StandardAtmosphere;

/**
 * The load, start and air to which both sides are brought: between those of both, so that the model
 * has the least to bridge. Immutable.
 *
 * @param outsideCelsius outside air
 * @param pressureKilopascals of the outside air
 * @param metresPerSecond road speed
 * @param kilowatts power as the runs tell it
 * @param isOnRollers whether a workshop's fan blew
 * @param startCelsius of the store at the onset
 * @param source from what the heat is told
 * @param heatWatts of a constant load; of charge air not used
 * @param charge heat of charge air before and after; empty for others
 */
record CommonLoad(
    double outsideCelsius,
    double pressureKilopascals,
    double metresPerSecond,
    double kilowatts,
    boolean isOnRollers,
    double startCelsius,
    HeatSource source,
    double heatWatts,
    Optional<BothSides<ChargeAirHeat>> charge) {
  private static final double REFERENCE_DENSITY = 1.204;

  /** The load as one side's cooler takes it. */
  LoadCourse of(Side side, HeatDraw heat, int seconds) {
    return new Held(this, side, heat, seconds);
  }

  /** A load that is held from the onset on. */
  private record Held(CommonLoad common, Side side, HeatDraw heat, int seconds)
      implements LoadCourse {
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
      double arrived = -Math.expm1(-(second + 0.5) / heat.arrivesSeconds());
      return common
          .charge
          .map(each -> arrived * each.of(side).watts(celsius, heat.compressorEfficiency()))
          .orElse(common.heatWatts);
    }

    @Override
    public double outsideCelsius(int second) {
      return common.outsideCelsius;
    }

    @Override
    public double metresPerSecond(int second) {
      return common.metresPerSecond;
    }

    @Override
    public double densityShare(int second) {
      return StandardAtmosphere.density(common.pressureKilopascals, common.outsideCelsius)
          / REFERENCE_DENSITY;
    }

    @Override
    public boolean isOnRollers() {
      return common.isOnRollers;
    }
  }

  /** The middle between both sides' means. */
  static double middle(List<RunLoad> loads, ToDoubleFunction<RunLoad> figure) {
    return (mean(loads, Side.BEFORE, figure) + mean(loads, Side.AFTER, figure)) / 2;
  }

  static double mean(List<RunLoad> loads, Side side, ToDoubleFunction<RunLoad> figure) {
    return loads.stream()
        .filter(load -> load.run().side() == side)
        .mapToDouble(figure)
        .average()
        .orElse(Double.NaN);
  }

  /** Of runs of both sides, one or more each. */
  static CommonLoad of(
      List<RunLoad> loads,
      Store store,
      HeatSource source,
      Conditions wished,
      ToDoubleFunction<RunLoad> startCelsius) {
    double outside = wished.outsideCelsius().orElse(middle(loads, RunLoad::heldOutside));
    double pressure = middle(loads, CommonLoad::pressure);
    double kilowatts = middle(loads, RunLoad::heldKilowatts);
    double perKilowatt = middle(loads, load -> load.heldHeat() / Math.max(1, load.heldKilowatts()));
    double start =
        store.isAboveOutside()
            ? outside + middle(loads, l -> startCelsius.applyAsDouble(l) - l.heldOutside())
            : middle(loads, startCelsius);
    return new CommonLoad(
        outside,
        pressure,
        middle(loads, RunLoad::heldSpeed),
        kilowatts,
        loads.stream().allMatch(RunLoad::isOnRollers),
        start,
        source,
        perKilowatt * kilowatts,
        source == HeatSource.CHARGE_AIR
            ? Optional.of(
                ChargeAirHeat.of(loads, store.isCoreItself(), kilowatts, outside, pressure))
            : Optional.empty());
  }

  private static double pressure(RunLoad load) {
    return load.held(
        load.column(
            Channels.BAROMETRIC_PRESSURE,
            load.run()
                .start()
                .pressureKilopascals()
                .orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS)));
  }
}
