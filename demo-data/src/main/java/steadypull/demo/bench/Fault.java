package steadypull.demo.bench;

import java.util.Locale;

/**
 * Something that goes wrong on purpose during a span of the bench's time.
 *
 * @param kind what goes wrong
 * @param fromSeconds from here on
 * @param untilSeconds until here; infinite if it stays
 */
record Fault(Kind kind, double fromSeconds, double untilSeconds) {

  /** What can go wrong. */
  enum Kind {
    /** The port is gone: reading, writing and opening fail. */
    VANISH,
    /** The adapter sends bytes without meaning. */
    NONSENSE,
    /** The adapter takes everything and says nothing. */
    SILENT,
    /** The vehicle's control units are asleep. */
    ENGINE_OFF,
    /** Echo cannot be switched off. */
    ECHO,
    /** Service 22 first answers that the response is pending. */
    PENDING;

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  Fault {
    if (!(fromSeconds >= 0 && untilSeconds > fromSeconds)) {
      throw new IllegalArgumentException(
          "A fault lasts from 0 s or later until a later time, found %s to %s"
              .formatted(fromSeconds, untilSeconds));
    }
  }

  boolean isOn(double seconds) {
    return seconds >= fromSeconds && seconds < untilSeconds;
  }

  /**
   * Reads {@code kind}, {@code kind@FROM} or {@code kind@FROM-UNTIL}, seconds on the bench's clock.
   *
   * @throws IllegalArgumentException if the text has another form
   */
  static Fault parse(String text) {
    int at = text.indexOf('@');
    String word = at < 0 ? text : text.substring(0, at);
    String span = at < 0 ? "0" : text.substring(at + 1);
    int dash = span.indexOf('-');
    double from = Double.parseDouble(dash < 0 ? span : span.substring(0, dash));
    double until =
        dash < 0 ? Double.POSITIVE_INFINITY : Double.parseDouble(span.substring(dash + 1));
    for (Kind kind : Kind.values()) {
      if (kind.word().equals(word)) {
        return new Fault(kind, from, until);
      }
    }
    throw new IllegalArgumentException("unknown fault " + word);
  }
}
