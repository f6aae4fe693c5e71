package steadypull.store;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * A comparison of runs as somebody put it together. Immutable.
 *
 * @param name as the workshop calls it; a line, not blank
 * @param kept when it was last kept, to a microsecond
 * @param channelId that is compared
 * @param sides each source in the order told
 * @param answers what was asked of the job and answered, as TOML; may be empty
 */
public record KeptComparison(
    String name, Instant kept, String channelId, List<Source> sides, String answers) {
  public KeptComparison {
    Objects.requireNonNull(kept);
    Objects.requireNonNull(channelId);
    Objects.requireNonNull(answers);
    sides = List.copyOf(sides);
    if (name.isBlank() || name.lines().count() != 1) {
      throw new IllegalArgumentException(
          "A comparison's name is a line of text, found \"" + name + "\"");
    }
  }

  /**
   * A source of runs.
   *
   * @param side {@code before} or {@code after}
   * @param what the trip's id, with the part of it that counts if not all does; one line
   */
  public record Source(String side, String what) {
    public Source {
      if (!side.equals("before") && !side.equals("after")) {
        throw new IllegalArgumentException("A side is before or after, found \"" + side + "\"");
      }
      if (what.isBlank() || what.lines().count() != 1) {
        throw new IllegalArgumentException("A source is a line of text, found \"" + what + "\"");
      }
    }
  }
}
