package steadypull.vehicle;

import java.util.Objects;

/**
 * Where a limit comes from. A limit without its provenance is not to be trusted.
 *
 * @param kind who says so
 * @param note what exactly, in the user's words; may be empty
 */
public record Provenance(Kind kind, String note) {
  public Provenance {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(note);
  }

  /** Who gave the figure, most binding first. */
  public enum Kind {
    MAKER,
    WORKSHOP,
    OWNER,
    /** Our cautious default (common practice, no source); to be replaced. */
    DEFAULT
  }
}
