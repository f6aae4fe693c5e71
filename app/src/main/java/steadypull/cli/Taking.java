package steadypull.cli;

import steadypull.store.TripAdder;

/** A file that was opened, and so found good as far as that can be told, on its way in. */
@FunctionalInterface
interface Taking {
  /** Takes it, once; returns the id that is printed. */
  String into(TripAdder library) throws Exception;
}
