package steadypull.ui;

import java.util.Optional;
import steadypull.drive.ExportTarget;

/** Asks a person where to write a trip. FX thread only. */
interface FileChoice {
  /**
   * Asks, and waits for the answer.
   *
   * @param tripId proposed as the name
   * @return the file and whether places are left out, its name ending in {@code .csv}, {@code
   *     .trip} or {@code .gpx} unless the person wrote another ending; empty if they thought better
   *     of it
   */
  Optional<ExportTarget> forTrip(String tripId);
}
