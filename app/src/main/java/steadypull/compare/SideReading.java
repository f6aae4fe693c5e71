package steadypull.compare;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import steadypull.thermal.Belief;

/** Makes the figures of one side. Stateless. */
final class SideReading {
  private static final int RISE_SECONDS = 30;
  private static final int LONGEST_SECONDS = 3601;

  private SideReading() {}

  /**
   * All figures of a side.
   *
   * @param runs of both sides
   * @param limit degC, if one is known
   */
  static SideFigures of(
      Side side, List<Run> runs, Store store, CommonLoad load, Draws draws, OptionalDouble limit) {
    double off = store.isAboveOutside() ? load.outsideCelsius() : 0;
    boolean isAbsolute = load.source().isAbsolute();
    boolean isCharge = load.charge().isPresent();
    return new SideFigures(
        when(isAbsolute, draws, drawn -> drawn.of(side).joules()),
        when(isAbsolute, draws, drawn -> drawn.of(side).watts()),
        when(isCharge, draws, drawn -> drawn.of(side).effectiveness()),
        when(isAbsolute, draws, drawn -> drawn.of(side).rejectedWatts()),
        Optional.of(draws.belief(drawn -> drawn.of(side).settled() - off)),
        Optional.of(
            draws.belief(
                drawn ->
                    (drawn.of(side).celsius(RISE_SECONDS) - drawn.of(side).celsius(0))
                        / RISE_SECONDS)),
        limit.isPresent() ? secondsTo(draws, side, limit.getAsDouble()) : OptionalDouble.empty(),
        Derates.seconds(runs, side),
        Derates.kilowattHours(runs, side),
        Recovery.kelvinPerMinute(runs, side, store.channel()),
        limit.isPresent()
            ? Bounds.kilowatts(draws, load, side, limit.getAsDouble())
            : Optional.empty(),
        limit.isPresent()
            ? Bounds.outside(draws, load, side, limit.getAsDouble())
            : Optional.empty());
  }

  private static Optional<Belief> when(
      boolean isTold, Draws draws, ToDoubleFunction<Drawn> figure) {
    return isTold ? Optional.of(draws.belief(figure)) : Optional.empty();
  }

  private static OptionalDouble secondsTo(Draws draws, Side side, double limit) {
    double[] course = draws.likeliest(side, LONGEST_SECONDS);
    for (int second = 0; second < course.length; second++) {
      if (course[second] >= limit) {
        return OptionalDouble.of(second);
      }
    }
    return OptionalDouble.empty();
  }
}
