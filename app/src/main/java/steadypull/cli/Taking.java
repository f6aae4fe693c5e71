package steadypull.cli;

import java.util.List;
import steadypull.store.TripAdder;

/** A file that was opened, and so found good as far as that can be told, on its way in. */
@FunctionalInterface
interface Taking {
  /** Takes it, once; returns the ids that are printed, each on a line. */
  List<String> into(TripAdder library) throws Exception;
}
