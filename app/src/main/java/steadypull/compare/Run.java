package steadypull.compare;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * One pull or climb under a steady load, before or after a change. Immutable.
 *
 * @param source the trip's id, or the file's name
 * @param onsetSeconds of the trip, at which the load came on
 * @param side before or after
 * @param place of the run in the order in which sides were told, 0 first; before-after-before is
 *     told by it
 * @param day on which it was driven; empty if a table does not say
 * @param ground road or rollers
 * @param series second by second
 * @param start the state at the onset
 * @param notes what somebody said of it
 */
public record Run(
    String source,
    double onsetSeconds,
    Side side,
    int place,
    Optional<LocalDate> day,
    Ground ground,
    RunSeries series,
    RunStart start,
    RunNotes notes) {
  public Run {
    Objects.requireNonNull(source);
    Objects.requireNonNull(side);
    Objects.requireNonNull(day);
    Objects.requireNonNull(ground);
    Objects.requireNonNull(series);
    Objects.requireNonNull(start);
    Objects.requireNonNull(notes);
  }

  /** What the run was driven on. A closed set. */
  public enum Ground {
    ROAD,
    ROLLERS,
    UNKNOWN
  }
}
