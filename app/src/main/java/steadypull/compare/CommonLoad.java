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
  /** The same at another power, above 0. */
  CommonLoad at(double otherKilowatts) {
    double share = otherKilowatts / kilowatts;
    return new CommonLoad(
        outsideCelsius,
        pressureKilopascals,
        metresPerSecond,
        otherKilowatts,
        isOnRollers,
        startCelsius,
        source,
        heatWatts * source.share(otherKilowatts, kilowatts),
        charge.map(both -> new BothSides<>(both.before().at(share), both.after().at(share))));
  }

  /** The same in other outside air. */
  CommonLoad in(double otherCelsius) {
    double warmer = otherCelsius - outsideCelsius;
    return new CommonLoad(
        otherCelsius,
        pressureKilopascals,
        metresPerSecond,
        kilowatts,
        isOnRollers,
        startCelsius,
        source,
        heatWatts,
        charge.map(
            both -> new BothSides<>(both.before().warmer(warmer), both.after().warmer(warmer))));
  }

  /** Its charge air on one side in one draw; empty where none is. */
  Optional<ChargeAirHeat> charge(Side side, HeatDraw heat) {
    return charge.map(both -> both.of(side).taking(heat.effectiveness().of(side)));
  }

  /** The load as one side's cooler takes it. */
  LoadCourse of(Side side, HeatDraw heat, int seconds) {
    return new HeldCommon(this, side, heat, seconds);
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
    double heat =
        middle(loads, each -> each.heldHeat() * source.share(kilowatts, each.heldKilowatts()));
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
        heat,
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
