package steadypull.compare;

import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;

/**
 * A run with what it pulled, while runs are held against each other. Immutable.
 *
 * @param run the run
 * @param stretch of its trip
 * @param power of its trip
 */
record FoundRun(Run run, Stretch stretch, PullPower power) {
  /** Mean over so many seconds from the onset, or the whole load, kW; 0 if it cannot be told. */
  double kilowatts(int window) {
    return mean(0, Math.min(window, run.loadSeconds())).orElse(0);
  }

  /** The same whose load was equal to the others' for so long. */
  FoundRun withHeldSeconds(int seconds) {
    return new FoundRun(run.withHeldSeconds(seconds), stretch, power);
  }

  /** Mean between two seconds since the onset, kW; empty if it cannot be told. */
  OptionalDouble mean(int from, int to) {
    return power.mean(stretch.onset() + from, stretch.onset() + to);
  }

  /** Mean torque at the crankshaft over so many seconds, N.m; empty if it was not told. */
  OptionalDouble newtonMetres(int window) {
    OptionalDouble percent = Figures.mean(run.series().span(Channels.DELIVERED_TORQUE, 0, window));
    OptionalDouble reference =
        Figures.mean(run.series().span(Channels.REFERENCE_TORQUE, 0, window));
    return percent.isPresent() && reference.isPresent()
        ? OptionalDouble.of(
            (percent.getAsDouble() - EnginePower.FRICTION_PERCENT) / 100 * reference.getAsDouble())
        : OptionalDouble.empty();
  }
}
