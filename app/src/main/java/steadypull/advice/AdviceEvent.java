package steadypull.advice;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/**
 * Something that the rules or the derate detector said, in the order in which it was said.
 *
 * @param timeMicros microseconds since trip start
 * @param kind what happened
 * @param rule id of the rule, or empty for events without a rule
 * @param level level after the event, or empty for events without a level
 * @param channel the channel that is meant, if one
 * @param value its value then, in its unit
 * @param limit its limit
 * @param probability180 probability of reaching the limit within 180 s
 * @param secondsToLimit median; empty if "never"
 * @param secondsToLimitP10 10 % quantile, likewise
 * @param secondsToLimitP90 90 % quantile, likewise
 * @param settlesAt where the channel settles at the present load, degC
 * @param text what the driver is told; may be empty
 */
public record AdviceEvent(
    long timeMicros,
    Kind kind,
    Optional<String> rule,
    Optional<Level> level,
    Optional<Channel> channel,
    OptionalDouble value,
    OptionalDouble limit,
    OptionalDouble probability180,
    OptionalDouble secondsToLimit,
    OptionalDouble secondsToLimitP10,
    OptionalDouble secondsToLimitP90,
    OptionalDouble settlesAt,
    String text) {
  public AdviceEvent {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(text);
  }

  /** The closed set of events; what is no response ({@link #isResponse}) a replay prints. */
  public enum Kind {
    RAISED("raised"),
    ESCALATED("escalated"),
    EASED("eased"),
    CLEARED("cleared"),
    ACKNOWLEDGED("acknowledged"),
    SHELVED("shelved"),
    UNSHELVED("unshelved"),
    /** A channel joined an advisory that stands; the one that raised it was first out. */
    JOINED("joined"),
    /** An advisory ended because its rules do not apply now, by design; follows its clearing. */
    SUPPRESSED("suppressed"),
    /** Advice to take load off was followed, and it held. */
    ADVICE_HELD("advice-held"),
    /** It was followed, and the limit was reached or power was cut all the same. */
    ADVICE_FAILED("advice-failed"),
    /** It was not followed. */
    ADVICE_NOT_FOLLOWED("advice-not-followed"),
    /** A rule file has taken a rule out of service; told at the start of the trip. */
    OUT_OF_SERVICE("out-of-service"),
    DERATE_BEGAN("derate-began"),
    DERATE_ENDED("derate-ended"),
    POWER_LIMITED("power-limited");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word used in files and command output. */
    public String word() {
      return word;
    }

    /** Whether it is kept with the trip and told nobody on the way. */
    public boolean isForTheRecord() {
      return switch (this) {
        case JOINED, SUPPRESSED, ADVICE_HELD, ADVICE_FAILED, ADVICE_NOT_FOLLOWED -> true;
        case RAISED,
            ESCALATED,
            EASED,
            CLEARED,
            ACKNOWLEDGED,
            SHELVED,
            UNSHELVED,
            OUT_OF_SERVICE,
            DERATE_BEGAN,
            DERATE_ENDED,
            POWER_LIMITED ->
            false;
      };
    }

    /**
     * Whether it tells of an advisory's own life (answers to it, channels that join, rules put
     * aside), not of the vehicle.
     */
    public boolean isResponse() {
      return switch (this) {
        case ACKNOWLEDGED,
            SHELVED,
            UNSHELVED,
            JOINED,
            SUPPRESSED,
            ADVICE_HELD,
            ADVICE_FAILED,
            ADVICE_NOT_FOLLOWED,
            OUT_OF_SERVICE ->
            true;
        case RAISED, ESCALATED, EASED, CLEARED, DERATE_BEGAN, DERATE_ENDED, POWER_LIMITED -> false;
      };
    }
  }
}
