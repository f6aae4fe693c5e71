package steadypull.compare;

import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;

/** From what the heat that comes into a store is told. A closed set. */
enum HeatSource {
  /** Measured: air flow, and what the air loses in the charge cooler. */
  CHARGE_AIR(0.05, 0.015),
  /** A share of the fuel's heat, known within a fifth. */
  FUEL(0.2, 0.01),
  /**
   * Charge air that is not measured: air flow and what the compressor heats both grow with the
   * power, so that heat goes with it to about 1.8 (estimated), by a share that nobody knows.
   */
  BOOST(Double.POSITIVE_INFINITY, 0.05),
  /** Goes with the engine's power by a share that nobody knows. */
  POWER(Double.POSITIVE_INFINITY, 0.03);

  /** Dry air at 100 degC, J/(kg K) (equation of state of Lemmon et al., 2000). */
  static final double AIR_HEAT_CAPACITY = 1011;

  /**
   * Share of the fuel's heat in the coolant: 0.16 to 0.35 (Heywood, Internal Combustion Engine
   * Fundamentals, table 12.1); modern diesels 0.18 to 0.25 (common practice, no source).
   */
  private static final double COOLANT_SHARE = 0.2;

  /** So that figures are in a range of their own; they are told as shares alone. */
  private static final double POWER_SHARE = 0.05;

  private static final double BOOST_EXPONENT = 1.8;
  private static final double USUAL_KILOWATTS = 120;
  private static final double WATTS_PER_KILOWATT = 1000;

  private final double relativeError;
  private final double dailyDrift;

  HeatSource(double relativeError, double dailyDrift) {
    this.relativeError = relativeError;
    this.dailyDrift = dailyDrift;
  }

  /** Standard deviation of a factor that all runs share (estimated). */
  double relativeError() {
    return relativeError;
  }

  /** Standard deviation of a factor that differs from day to day (estimated). */
  double dailyDrift() {
    return dailyDrift;
  }

  /** Whether J/K and W/K mean something. */
  boolean isAbsolute() {
    return Double.isFinite(relativeError);
  }

  /** Heat at a power over that at another. */
  double share(double kilowatts, double otherKilowatts) {
    return Math.pow(kilowatts / Math.max(1, otherKilowatts), exponent());
  }

  private double exponent() {
    return switch (this) {
      case BOOST -> BOOST_EXPONENT;
      case CHARGE_AIR, FUEL, POWER -> 1;
    };
  }

  private double grown(double kilowatts) {
    double power = Math.max(0, kilowatts);
    return USUAL_KILOWATTS * Math.pow(power / USUAL_KILOWATTS, exponent());
  }

  /** The best that all runs allow for a channel; empty if no power is told. */
  static Optional<HeatSource> of(Channel channel, List<Run> runs) {
    boolean isCharge =
        channel.equals(Channels.CHARGE_COOLANT_TEMP)
            || channel.equals(Channels.CHARGE_AIR_TEMP_OUT);
    if (isCharge
        && all(runs, Channels.AIR_MASS_FLOW, Channels.CHARGE_AIR_TEMP_IN)
        && all(runs, Channels.CHARGE_AIR_TEMP_OUT)) {
      return Optional.of(CHARGE_AIR);
    }
    if (channel.equals(Channels.ENGINE_COOLANT_TEMP) && all(runs, Channels.FUEL_RATE)) {
      return Optional.of(FUEL);
    }
    boolean isTold = runs.stream().allMatch(run -> Power.isTold(run));
    return isTold ? Optional.of(isCharge ? BOOST : POWER) : Optional.empty();
  }

  private static boolean all(List<Run> runs, Channel... channels) {
    return runs.stream()
        .allMatch(run -> List.of(channels).stream().allMatch(each -> Columns.isHeard(run, each)));
  }

  /** Heat second by second, W. */
  double[] watts(Run run, int from, int to) {
    return switch (this) {
      case CHARGE_AIR -> {
        double[] flow = Columns.held(run.series(), Channels.AIR_MASS_FLOW, from, to, 0);
        double[] in = Columns.held(run.series(), Channels.CHARGE_AIR_TEMP_IN, from, to, 0);
        double[] out = Columns.held(run.series(), Channels.CHARGE_AIR_TEMP_OUT, from, to, 0);
        yield Columns.each(
            to - from, i -> flow[i] / WATTS_PER_KILOWATT * AIR_HEAT_CAPACITY * (in[i] - out[i]));
      }
      case FUEL -> {
        double[] litres = Columns.held(run.series(), Channels.FUEL_RATE, from, to, 0);
        double each =
            EnginePower.FUEL_KILOWATTS_PER_LITRE_PER_HOUR * WATTS_PER_KILOWATT * COOLANT_SHARE;
        yield Columns.each(to - from, i -> litres[i] * each);
      }
      case BOOST, POWER -> {
        double[] kilowatts = Power.kilowatts(run, from, to);
        yield Columns.each(to - from, i -> POWER_SHARE * WATTS_PER_KILOWATT * grown(kilowatts[i]));
      }
    };
  }
}
