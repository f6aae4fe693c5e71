package steadypull.compare;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A trip or table as somebody names it, with the part of it that counts: {@code TRIP@120-480} is
 * what lies between 120 s and 480 s after the start of the trip. Immutable.
 *
 * @param what a trip's id or a file
 * @param span the part; empty: the whole
 */
public record TripPart(String what, Optional<Span> span) {
  private static final Pattern PART =
      Pattern.compile("(.+)@(\\d{1,7}(?:\\.\\d{1,3})?)-(\\d{1,7}(?:\\.\\d{1,3})?)");

  public TripPart {
    Objects.requireNonNull(what);
    Objects.requireNonNull(span);
  }

  /**
   * A part of a trip.
   *
   * @param fromSeconds since the start of the trip, 0 or more
   * @param toSeconds later than it begins
   */
  public record Span(double fromSeconds, double toSeconds) {
    public Span {
      if (!(fromSeconds >= 0 && toSeconds > fromSeconds)) {
        throw new IllegalArgumentException(
            "A part of a trip ends after it begins, found %s to %s s"
                .formatted(fromSeconds, toSeconds));
      }
    }
  }

  /**
   * Reads it.
   *
   * @throws IllegalArgumentException if a part ends before it begins
   */
  public static TripPart parse(String text) {
    Matcher part = PART.matcher(text);
    return part.matches()
        ? new TripPart(
            part.group(1),
            Optional.of(
                new Span(Double.parseDouble(part.group(2)), Double.parseDouble(part.group(3)))))
        : new TripPart(text, Optional.empty());
  }
}
