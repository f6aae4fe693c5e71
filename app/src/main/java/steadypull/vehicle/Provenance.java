package steadypull.vehicle;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

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
    /** Where the vehicle itself began to take power away, confirmed by somebody. */
    LEARNT,
    /** Our cautious default (common practice, no source); to be replaced. */
    DEFAULT;

    /** The word used in files and commands. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The kind of that word, or empty if there is none. */
    public static Optional<Kind> of(String word) {
      return Stream.of(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
  }
}
