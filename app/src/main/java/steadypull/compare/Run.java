package steadypull.compare;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import steadypull.vehicle.Vehicle;

/**
 * One pull or climb under a steady load, before or after a change. Immutable.
 *
 * @param source the trip's id, or the file's name
 * @param onsetSeconds of the trip, at which the load came on
 * @param side before or after
 * @param place of the run in the order in which sides were told, 0 first; before-after-before is
 *     told by it
 * @param day on which it was driven; empty if a table does not say
 * @param vehicle as it was then: limits, layout and what it towed
 * @param ground road or rollers
 * @param loadSeconds from the onset to the end of the load, above 0
 * @param heldSeconds from the onset for as long as the load stayed within 15 % of what the runs
 *     before mostly pulled at the same second: the window in which loads are equal; at most {@code
 *     loadSeconds}
 * @param series second by second, from before the onset until some minutes after the load
 * @param start the state at the onset
 * @param notes what somebody said of it
 */
public record Run(
    String source,
    double onsetSeconds,
    Side side,
    int place,
    Optional<LocalDate> day,
    Vehicle vehicle,
    Ground ground,
    int loadSeconds,
    int heldSeconds,
    RunSeries series,
    RunStart start,
    RunNotes notes) {
  public Run {
    Objects.requireNonNull(source);
    Objects.requireNonNull(side);
    Objects.requireNonNull(day);
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(ground);
    Objects.requireNonNull(series);
    Objects.requireNonNull(start);
    Objects.requireNonNull(notes);
    if (loadSeconds < 1 || heldSeconds < 0 || heldSeconds > loadSeconds) {
      throw new IllegalArgumentException(
          "A load lasts, and is held no longer; found %d and %d s"
              .formatted(loadSeconds, heldSeconds));
    }
  }

  /** The same run whose load was equal to the others' for so long. */
  Run withHeldSeconds(int other) {
    return new Run(
        source,
        onsetSeconds,
        side,
        place,
        day,
        vehicle,
        ground,
        loadSeconds,
        other,
        series,
        start,
        notes);
  }

  /** What the run was driven on. A closed set. */
  public enum Ground {
    ROAD,
    ROLLERS,
    UNKNOWN
  }
}
