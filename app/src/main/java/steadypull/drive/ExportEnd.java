package steadypull.drive;

import java.util.Objects;
import steadypull.store.TripDamage;

/** How an export ended that was not refused. A closed set. */
public sealed interface ExportEnd {
  /**
   * The file is written.
   *
   * @param damage what of the trip could not be read and is missing there
   */
  record Written(TripDamage damage) implements ExportEnd {
    public Written {
      Objects.requireNonNull(damage);
    }
  }

  /** Somebody ended it; there is no new file, and an old one is as it was. */
  record Stopped() implements ExportEnd {}
}
