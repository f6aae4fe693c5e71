package steadypull.compare;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;

/** The power of a run, at the wheels where it is told, else at the engine. Stateless. */
final class Power {
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297; // 60000 / (2 pi)

  /** Share of fuel power at the crankshaft, 0.38 to 0.42 (common practice, no source). */
  private static final double SHAFT_SHARE = 0.40;

  /** A diesel breathes about 1.3 g/s per kW (estimated: air-fuel ratio 22, 215 g/kWh). */
  private static final double AIR_GRAMS_PER_SECOND_PER_KILOWATT = 1.3;

  private Power() {}

  static boolean isTold(Run run) {
    return Columns.isHeard(run, Channels.WHEEL_POWER)
        || isTorqueTold(run)
        || Columns.isHeard(run, Channels.FUEL_RATE)
        || Columns.isHeard(run, Channels.AIR_MASS_FLOW);
  }

  private static boolean isTorqueTold(Run run) {
    return List.of(Channels.DELIVERED_TORQUE, Channels.ENGINE_SPEED, Channels.REFERENCE_TORQUE)
        .stream()
        .allMatch(each -> Columns.isHeard(run, each));
  }

  /** kW from a second to before another; 0 where nothing tells it. */
  static double[] kilowatts(Run run, int from, int to) {
    if (Columns.isHeard(run, Channels.WHEEL_POWER)) {
      return Columns.held(run.series(), Channels.WHEEL_POWER, from, to, 0);
    }
    if (isTorqueTold(run)) {
      return ofTorque(run, Channels.DELIVERED_TORQUE, from, to);
    }
    if (Columns.isHeard(run, Channels.FUEL_RATE)) {
      return scaled(
          run,
          Channels.FUEL_RATE,
          EnginePower.FUEL_KILOWATTS_PER_LITRE_PER_HOUR * SHAFT_SHARE,
          from,
          to);
    }
    return scaled(run, Channels.AIR_MASS_FLOW, 1 / AIR_GRAMS_PER_SECOND_PER_KILOWATT, from, to);
  }

  /** What a torque in per cent of the reference is at the crankshaft, kW. */
  static double[] ofTorque(Run run, Channel percent, int from, int to) {
    double[] shares = Columns.held(run.series(), percent, from, to, 0);
    double[] turns = Columns.held(run.series(), Channels.ENGINE_SPEED, from, to, 0);
    double[] reference = Columns.held(run.series(), Channels.REFERENCE_TORQUE, from, to, 0);
    return Columns.each(
        to - from,
        i ->
            (shares[i] - EnginePower.FRICTION_PERCENT)
                / 100
                * reference[i]
                * turns[i]
                / NEWTON_METRE_RPM_PER_KILOWATT);
  }

  private static double[] scaled(Run run, Channel channel, double factor, int from, int to) {
    double[] values = Columns.held(run.series(), channel, from, to, 0);
    return Columns.each(to - from, i -> values[i] * factor);
  }
}
