package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;

/** What tells how hard an engine pulls where demanded torque is missing. A closed set. */
enum PullBasis {
  /** Fuel or torque at an engine speed; each reads in steps, and fuel is not torque (estimated). */
  TORQUE(1),
  /** Air at an engine speed; hot charge is thinner, 15 K cost 5 % (ideal gas at 320 K). */
  AIR(5),
  /** Per cent of what the engine could give at this speed. */
  LOAD(1);

  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT =
      Derate.Loss.NEWTON_METRE_RPM_PER_KILOWATT;

  private static final double FRESH_SECONDS = 5;

  private final double blurPercent;

  PullBasis(double blurPercent) {
    this.blurPercent = blurPercent;
  }

  /** What may be missing for other reasons, per cent. */
  double blurPercent() {
    return blurPercent;
  }

  /**
   * How hard it pulls.
   *
   * @param value N.m, per cent for a load, 0 or more
   */
  record Strength(PullBasis basis, double value) {}

  /** The pull from the best fresh channels, or empty if there is none. */
  static Optional<Strength> tell(LatestSamples samples, long timeMicros, OptionalDouble engineRpm) {
    Optional<EnginePower> power = EnginePower.tell(samples, timeMicros);
    if (power.isEmpty() || engineRpm.orElse(0) <= 0) {
      return Optional.empty();
    }
    double torque =
        power.get().kilowatts() * NEWTON_METRE_RPM_PER_KILOWATT / engineRpm.getAsDouble();
    return switch (power.get().basis()) {
      case TORQUE, FUEL -> Optional.of(new Strength(TORQUE, torque));
      case AIR_FLOW -> Optional.of(load(samples, timeMicros).orElse(new Strength(AIR, torque)));
      case ENGINE_LOAD -> load(samples, timeMicros);
    };
  }

  private static Optional<Strength> load(LatestSamples samples, long timeMicros) {
    OptionalDouble percent = samples.within(Channels.ENGINE_LOAD, timeMicros, FRESH_SECONDS);
    return percent.isPresent()
        ? Optional.of(new Strength(LOAD, percent.getAsDouble()))
        : Optional.empty();
  }
}
