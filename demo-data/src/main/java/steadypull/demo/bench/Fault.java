package steadypull.demo.bench;

import java.util.Locale;
import java.util.stream.Stream;

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
    /** The port is gone: reading, writing and opening fail; the adapter has lost its power. */
    VANISH,
    /** The adapter sends bytes without meaning. */
    NONSENSE,
    /** The adapter takes everything and says nothing. */
    SILENT,
    /** The vehicle's control units are asleep. */
    ENGINE_OFF,
    /** The ignition is on and the engine stands: control units answer, nothing charges. */
    ENGINE_STOPPED,
    /** Echo cannot be switched off. */
    ECHO,
    /** Service 22 first answers that the response is pending. */
    PENDING,
    /** NUL bytes stand between the characters. */
    NULS,
    /** Here and there one bit of a character is another. */
    FLIPPED_BITS,
    /** Requests end with CAN ERROR. */
    CAN_ERROR,
    /** Requests end with BUS ERROR. */
    BUS_ERROR,
    /** Requests end with BUS BUSY. */
    BUS_BUSY,
    /** Requests end with FB ERROR. */
    FB_ERROR,
    /** Requests end with DATA ERROR. */
    DATA_ERROR,
    /** Some lines are wrong and marked as such, {@code <DATA ERROR}. */
    MARKED_DATA_ERROR,
    /** Some lines are wrong and marked as such, {@code <RX ERROR}. */
    MARKED_RX_ERROR,
    /** Replies break off with BUFFER FULL. */
    BUFFER_FULL,
    /** Requests end with STOPPED, as if a byte had come in between. */
    STOPPED,
    /** The starter turns: supply under 9 V, nobody answers, the adapter starts anew. */
    LV_RESET,
    /** Requests end with ERR94 and the adapter's settings are lost. */
    ERR94,
    /** The adapter starts anew at the beginning of the span and tells its identity unasked. */
    REBOOT,
    /** ACT ALERT comes unasked at the beginning of the span, in the middle of whatever runs. */
    ACT_ALERT,
    /** LP ALERT likewise. */
    LP_ALERT,
    /** Some answers come too late and appear in the reply to the next request. */
    LATE_ANSWER,
    /** One consecutive frame of every long answer is missing. */
    MISSING_FRAME,
    /** One consecutive frame of every long answer has a wrong number. */
    WRONG_SEQUENCE,
    /** A third, talkative control unit answers in the same milliseconds. */
    INTERLEAVED,
    /** Every frame is filled up with another value. */
    PADDING;

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
    throw new IllegalArgumentException(
        NearMatch.notFound("fault", word, Stream.of(Kind.values()).map(Kind::word).toList()));
  }
}
