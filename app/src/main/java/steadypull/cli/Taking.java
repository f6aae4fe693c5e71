package steadypull.cli;

import java.util.List;
import steadypull.store.TripAdder;

/** A file that was opened, and so found good as far as that can be told, on its way in. */
interface Taking {
  /** What kinds of things are taken. */
  enum Kind {
    TABLE,
    TRIP,
    ROUTE,
    SEASON
  }

  /** What it is. */
  Kind kind();

  /** Takes it, once; returns the ids that are printed, each on a line. */
  List<String> into(TripAdder library) throws Exception;

  /** Does the taking. */
  @FunctionalInterface
  interface Work {
    /** The same as {@link Taking#into}. */
    List<String> into(TripAdder library) throws Exception;
  }

  /** A taking of that kind. */
  static Taking of(Kind kind, Work work) {
    return new Taking() {
      @Override
      public Kind kind() {
        return kind;
      }

      @Override
      public List<String> into(TripAdder library) throws Exception {
        return work.into(library);
      }
    };
  }
}
