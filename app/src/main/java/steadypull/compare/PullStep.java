package steadypull.compare;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/** What to do now on a day of pulls. A closed set. */
public sealed interface PullStep {
  /**
   * Drive gently until the engine is warm.
   *
   * @param coolantCelsius now; empty if it is not heard, and then nobody can tell
   */
  record WarmUp(OptionalDouble coolantCelsius) implements PullStep {}

  /**
   * Wait: it would start warmer than the first pull did.
   *
   * @param channel that is farthest
   * @param kelvin above the first start
   * @param lastFault why the last pull does not count; empty if it does
   */
  record Cool(Place place, Channel channel, double kelvin, Optional<PullFault> lastFault)
      implements PullStep {}

  /**
   * Drive gently: it would start colder than the first pull did.
   *
   * @param channel that is farthest
   * @param kelvin below the first start, above 0
   */
  record Warm(Place place, Channel channel, double kelvin) implements PullStep {}

  /** A channel that must start alike is silent: wait for it. */
  record Silent(Place place, Channel channel) implements PullStep {}

  /**
   * Pull now.
   *
   * @param kilowatts as the first pull; empty: the first, hold what you like
   * @param lastFault why the last pull does not count; empty if it does
   */
  record Pull(Place place, OptionalDouble kilowatts, Optional<PullFault> lastFault)
      implements PullStep {}

  /**
   * Hold it.
   *
   * @param secondsLeft 0 or more
   * @param kilowatts of this pull so far
   * @param wishedKilowatts of the first pull; empty: this is it
   */
  record Hold(Place place, int secondsLeft, double kilowatts, OptionalDouble wishedKilowatts)
      implements PullStep {}

  /** Long enough: ease off. */
  record EaseOff(Place place) implements PullStep {}

  /** Change the cooling now, and say so when it is done. */
  record Change(Side next) implements PullStep {
    public Change {
      Objects.requireNonNull(next);
    }
  }

  /**
   * All is driven.
   *
   * @param pulls that count
   */
  record Done(int pulls) implements PullStep {}

  /**
   * Where in the day.
   *
   * @param side before or after the change
   * @param number of the pull within its group, from 1
   * @param of how many it has
   */
  record Place(Side side, int number, int of) {}
}
