package steadypull.adapter.capture;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One line of a capture.
 *
 * @param micros microseconds since the capture began, zero or more
 * @param kind what happened
 * @param text bytes as characters 0 to 255 where they were sent or heard; a reason in words where
 *     the link was refused or lost; else empty
 */
record CaptureEvent(long micros, Kind kind, String text) {
  CaptureEvent {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(text);
    if (micros < 0) {
      throw new IllegalArgumentException(
          "An event lies after the start of its capture, found " + micros + " us");
    }
  }

  /** The closed set of kinds. */
  enum Kind {
    /** The port was opened. */
    OPENED,
    /** The port would not open. */
    REFUSED,
    /** Bytes went to the adapter. */
    SENT,
    /** Bytes came from the adapter. */
    HEARD,
    /** The other side has gone. */
    LOST,
    /** The port was closed on this side. */
    CLOSED;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static Optional<Kind> of(String word) {
      return Stream.of(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
  }
}
