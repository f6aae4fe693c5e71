package steadypull.advice;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/**
 * What the driver is told right now: one state, one action, one reason. Immutable.
 *
 * @param state the state, which decides the look
 * @param response what the driver did about it
 * @param action the large line, at most 850 px wide at 64 px
 * @param reason the line below: result first, then the alternative
 * @param channel the channel that it is about, if one
 * @param easedSpeed the advised speed in km/h, if a speed is advised
 */
public record AdviceLine(
    State state,
    Response response,
    String action,
    String reason,
    Optional<Channel> channel,
    OptionalDouble easedSpeed) {
  public AdviceLine {
    Objects.requireNonNull(state);
    Objects.requireNonNull(response);
    Objects.requireNonNull(action);
    Objects.requireNonNull(reason);
  }

  /** The states of the line; they exclude each other. */
  public enum State {
    HOLDS,
    MAY_REACH,
    ADVISE,
    ACT_NOW,
    LIMITED_POWER,
    CODE_STORED,
    HOLDS_AGAIN,
    LINK_LOST,
    LEARNING
  }

  /** What the driver did. A closed set. */
  public sealed interface Response {
    /** Nothing yet, or nothing is asked. */
    record None() implements Response {}

    /**
     * The driver pressed "Got it", or follows the advice.
     *
     * @param timeMicros when, microseconds since trip start
     */
    record Acknowledged(long timeMicros) implements Response {}

    /**
     * Put aside for a while.
     *
     * @param untilMicros when it comes back, microseconds since trip start
     */
    record Snoozed(long untilMicros) implements Response {}
  }
}
