package steadypull.compare;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;

/**
 * What a trip pulled, second by second: the power at the wheels where that is told, else the
 * engine's from the best channels there are. One kind for the whole trip. Immutable.
 */
final class PullPower {
  /** Where it comes from, best first. A closed set. */
  enum Basis {
    WHEELS,
    TORQUE,
    FUEL,
    AIR_FLOW,
    ENGINE_LOAD,
    NOTHING
  }

  /** A kind must tell so many of the seconds of the best told kind to stand for the trip. */
  private static final double MOSTLY = 0.8;

  private static final double MICROS = 1e6;

  private final double[] kilowatts;
  private final Basis basis;

  private PullPower(double[] kilowatts, Basis basis) {
    this.kilowatts = kilowatts;
    this.basis = basis;
  }

  static PullPower of(Map<Channel, double[]> columns, int seconds) {
    Map<Basis, double[]> kinds = new EnumMap<>(Basis.class);
    double[] wheels = columns.get(Channels.WHEEL_POWER);
    if (wheels != null) {
      kinds.put(Basis.WHEELS, wheels);
    }
    for (int second = 0; second < seconds; second++) {
      tellEngine(columns, second, seconds, kinds);
    }
    return best(kinds, seconds);
  }

  private static void tellEngine(
      Map<Channel, double[]> columns, int second, int seconds, Map<Basis, double[]> kinds) {
    LatestSamples samples = new LatestSamples();
    long micros = Math.round(second * MICROS);
    for (Map.Entry<Channel, double[]> column : columns.entrySet()) {
      double value = column.getValue()[second];
      if (!Double.isNaN(value)) {
        samples.accept(new Sample(column.getKey(), micros, value));
      }
    }
    EnginePower.tell(samples, micros)
        .ifPresent(
            power ->
                kinds.computeIfAbsent(basis(power.basis()), _ -> nothing(seconds))[second] =
                    power.kilowatts());
  }

  private static double[] nothing(int seconds) {
    double[] nothing = new double[seconds];
    Arrays.fill(nothing, Double.NaN);
    return nothing;
  }

  private static Basis basis(EnginePower.Basis told) {
    return switch (told) {
      case TORQUE -> Basis.TORQUE;
      case FUEL -> Basis.FUEL;
      case AIR_FLOW -> Basis.AIR_FLOW;
      case ENGINE_LOAD -> Basis.ENGINE_LOAD;
    };
  }

  private static PullPower best(Map<Basis, double[]> kinds, int seconds) {
    long most = kinds.values().stream().mapToLong(Figures::count).max().orElse(0);
    for (Map.Entry<Basis, double[]> kind : kinds.entrySet()) {
      if (most > 0 && Figures.count(kind.getValue()) >= MOSTLY * most) {
        return new PullPower(kind.getValue(), kind.getKey());
      }
    }
    return new PullPower(nothing(seconds), Basis.NOTHING);
  }

  Basis basis() {
    return basis;
  }

  int seconds() {
    return kilowatts.length;
  }

  /** kW at a second, NaN where it cannot be told. */
  double at(int second) {
    return second >= 0 && second < kilowatts.length ? kilowatts[second] : Double.NaN;
  }

  /** kW from a second to before another, NaN where it cannot be told. */
  double[] span(int from, int to) {
    double[] span = new double[Math.max(0, to - from)];
    Arrays.setAll(span, i -> at(from + i));
    return span;
  }

  /** Mean kW of what is told between two seconds. */
  OptionalDouble mean(int from, int to) {
    return Figures.mean(span(from, to));
  }
}
