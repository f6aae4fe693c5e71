package steadypull.vehicle;

import java.time.Instant;
import java.util.Objects;

/**
 * A trip that was learnt from. Immutable.
 *
 * @param start when it began
 * @param heat what it told
 */
public record LessonOfTrip(Instant start, TripHeat heat) {
  public LessonOfTrip {
    Objects.requireNonNull(start);
    Objects.requireNonNull(heat);
  }
}
