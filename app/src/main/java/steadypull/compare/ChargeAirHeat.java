package steadypull.compare;

import java.util.Arrays;
import java.util.List;
import steadypull.channel.Channels;
import steadypull.road.StandardAtmosphere;

/**
 * Heat of the charge air at common conditions, as one side's cooler takes it. A cooler circuit is
 * not only given less: colder charge needs less boost, so that the compressor heats it less, by T1
 * (r^((k-1)/k) - 1) / eta with r in proportion to air flow and charge temperature (Heywood,
 * Internal Combustion Engine Fundamentals, chapter 6). Immutable.
 *
 * @param kilogramsPerSecond of air, above 0
 * @param inletKelvin before the compressor
 * @param heats what the compressor makes of it, (r^((k-1)/k) - 1), at the reference charge
 * @param chargeKelvin the reference charge
 * @param effectiveness of the cooler, 0 to 1
 */
record ChargeAirHeat(
    double kilogramsPerSecond,
    double inletKelvin,
    double heats,
    double chargeKelvin,
    double effectiveness) {
  private static final double EXPONENT = 0.4 / 1.4;

  /** Air under the bonnet against outside (common practice, no source). */
  private static final double INLET_ABOVE_OUTSIDE = 8;

  private static final double UNITS_FLOW_EXPONENT = -0.4;
  private static final int ROUNDS = 4;
  private static final double KELVIN = StandardAtmosphere.ZERO_CELSIUS_KELVIN;

  /** Charge temperatures with a store at a temperature: before and after the cooler, degC. */
  private double[] around(double celsius, double efficiency) {
    double out = chargeKelvin - KELVIN;
    double in = out;
    for (int i = 0; i < ROUNDS; i++) {
      double ratio = (1 + heats) * Math.pow((out + KELVIN) / chargeKelvin, EXPONENT);
      in = inletKelvin * (1 + (ratio - 1) / efficiency) - KELVIN;
      out = in - effectiveness * (in - celsius);
    }
    return new double[] {in, out};
  }

  /** Heat that the air gives to a store at a temperature, W. */
  double watts(double celsius, double efficiency) {
    double[] around = around(celsius, efficiency);
    return kilogramsPerSecond * HeatSource.AIR_HEAT_CAPACITY * (around[0] - around[1]);
  }

  /** Charge air behind the cooler, degC. */
  double outCelsius(double celsius, double efficiency) {
    return around(celsius, efficiency)[1];
  }

  /**
   * Share of what could be taken that is taken, 0 to 1, with the store at a temperature; of a core
   * in the air against the outside air.
   */
  double effectiveness(double celsius, double outsideCelsius, double efficiency) {
    double[] around = around(celsius, efficiency);
    return effectiveness < 1
        ? effectiveness
        : (around[0] - around[1]) / Math.max(1, around[0] - outsideCelsius);
  }

  /** The same engine at another power: air goes with it, and boost with the air. */
  ChargeAirHeat at(double share) {
    double ratio = (1 + heats) * Math.pow(share, EXPONENT);
    return new ChargeAirHeat(
        kilogramsPerSecond * share,
        inletKelvin,
        Math.max(0, ratio - 1),
        chargeKelvin,
        effectiveness);
  }

  /** In warmer outside air. */
  ChargeAirHeat warmer(double kelvin) {
    return new ChargeAirHeat(
        kilogramsPerSecond, inletKelvin + kelvin, heats, chargeKelvin, effectiveness);
  }

  /** With a cooler that takes more than told, as far as none takes all. */
  ChargeAirHeat taking(double more) {
    boolean isCoreItself = effectiveness >= 1;
    double other = isCoreItself ? 1 : Math.clamp(effectiveness + more, 0.02, 0.995);
    return new ChargeAirHeat(kilogramsPerSecond, inletKelvin, heats, chargeKelvin, other);
  }

  /** What one run tells: air flow, engine speed, pressure and temperatures while it was held. */
  private record Told(
      Side side,
      double flow,
      double turns,
      double kilopascals,
      double inlet,
      double in,
      double out,
      double store,
      double kilowatts,
      double outside) {
    static Told of(RunLoad load, boolean isOwnStore) {
      double[] in = load.column(Channels.CHARGE_AIR_TEMP_IN, 0);
      double[] out = load.column(Channels.CHARGE_AIR_TEMP_OUT, 0);
      double[] store = isOwnStore ? out : load.column(Channels.CHARGE_COOLANT_TEMP, 0);
      double outside = load.heldOutside();
      double[] inlet = load.column(Channels.INTAKE_AIR_TEMP, outside + INLET_ABOVE_OUTSIDE);
      double[] pressure =
          load.column(
              Channels.BAROMETRIC_PRESSURE,
              load.run()
                  .start()
                  .pressureKilopascals()
                  .orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS));
      return new Told(
          load.run().side(),
          load.held(load.column(Channels.AIR_MASS_FLOW, 0)) / 1000,
          Math.max(500, load.held(load.column(Channels.ENGINE_SPEED, 1800))),
          load.held(pressure),
          load.held(inlet) + KELVIN,
          load.held(in),
          load.held(out),
          load.held(store),
          Math.max(1, load.heldKilowatts()),
          outside);
    }

    /** At another air flow: transfer units go with it to the power of -0.4 (estimated). */
    double effectiveness(double commonFlow) {
      double told = Math.clamp((in - out) / Math.max(1, in - store), 0.05, 0.99);
      double units = -Math.log1p(-told) * Math.pow(commonFlow / flow, UNITS_FLOW_EXPONENT);
      return -Math.expm1(-units);
    }
  }

  /**
   * The heat of both sides at common conditions.
   *
   * @param isOwnStore whether the cooler's core is itself the store, as in the air
   * @return before and after
   */
  static BothSides<ChargeAirHeat> of(
      List<RunLoad> loads, boolean isOwnStore, double kilowatts, double outside, double pressure) {
    List<Told> told = loads.stream().map(load -> Told.of(load, isOwnStore)).toList();
    double flow = mean(told.stream().mapToDouble(t -> t.flow() / t.kilowatts()).toArray());
    double turns = mean(told.stream().mapToDouble(Told::turns).toArray());
    double charge = mean(told.stream().mapToDouble(Told::out).toArray()) + KELVIN;
    double warmer = mean(told.stream().mapToDouble(t -> t.inlet() - t.outside()).toArray());
    double[] heats =
        told.stream()
            .mapToDouble(
                t -> {
                  double heated = (t.in() + KELVIN - t.inlet()) / t.inlet();
                  double ratio =
                      flow
                          * kilowatts
                          / t.flow()
                          * t.turns()
                          / turns
                          * charge
                          / (t.out() + KELVIN)
                          * t.kilopascals()
                          / pressure;
                  return (1 + heated * HeatDraw.COMPRESSOR_EFFICIENCY) * Math.pow(ratio, EXPONENT)
                      - 1;
                })
            .toArray();
    return new BothSides<>(
        of(told, Side.BEFORE, flow * kilowatts, outside + warmer, mean(heats), charge, isOwnStore),
        of(told, Side.AFTER, flow * kilowatts, outside + warmer, mean(heats), charge, isOwnStore));
  }

  private static ChargeAirHeat of(
      List<Told> told,
      Side side,
      double flow,
      double inlet,
      double heats,
      double charge,
      boolean isOwnStore) {
    double effectiveness =
        isOwnStore
            ? 1
            : mean(
                told.stream()
                    .filter(t -> t.side() == side)
                    .mapToDouble(t -> t.effectiveness(flow))
                    .toArray());
    return new ChargeAirHeat(flow, inlet, heats, charge, effectiveness);
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElse(Double.NaN);
  }
}
