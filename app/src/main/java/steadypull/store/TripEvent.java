package steadypull.store;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Something other than a sample that belongs to a trip.
 *
 * @param timeMicros microseconds since the start of the trip, zero or more
 * @param kind what happened
 * @param detail what exactly, in the words of the room that tells it; may be empty
 */
public record TripEvent(long timeMicros, Kind kind, String detail) {
  public TripEvent {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(detail);
    if (timeMicros < 0) {
      throw new IllegalArgumentException(
          "An event lies after the start of its trip, found " + timeMicros + " us");
    }
  }

  /** The closed set of kinds. */
  public enum Kind {
    /** The state of the link to the vehicle changed. */
    LINK,
    /** The user marked the moment. */
    MARK,
    /** The user acknowledged an advisory. */
    ACKNOWLEDGED,
    /** The user put an advisory aside for a while. */
    SNOOZED,
    /** An advisory that had been put aside came back. */
    RESUMED,
    /** Something was shown to the driver. */
    SHOWN,
    /** The rules or the derate detector said something. */
    ADVICE,
    /** The clock of the tablet was set. */
    CLOCK,
    /** Recording itself: a failed commit, a recovery. */
    RECORDING,
    /** Something about the vehicle that was learnt during the trip. */
    VEHICLE,
    /** The trouble codes that the vehicle told have changed, or were told for the first time. */
    CODES,
    /** The tablet itself: battery, charger, sleep. */
    TABLET,
    /** What was known of the road ahead changed. */
    ROAD;

    /** The word used in the library and in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The kind of that word, or empty if there is none. */
    public static Optional<Kind> of(String word) {
      return Stream.of(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
  }
}
