package steadypull.drive;

import java.nio.file.Path;
import java.util.Objects;

/**
 * Where a trip is to be written, and how much of it. Immutable.
 *
 * @param file whose name tells the form
 * @param isWithoutPositions leaves out where the vehicle was; a track is then refused
 */
public record ExportTarget(Path file, boolean isWithoutPositions) {
  public ExportTarget {
    Objects.requireNonNull(file);
  }

  /** With all that the trip holds. */
  public static ExportTarget whole(Path file) {
    return new ExportTarget(file, false);
  }
}
