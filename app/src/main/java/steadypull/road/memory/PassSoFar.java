package steadypull.road.memory;

import java.util.Optional;

/**
 * Where a pass stands that is learned piece by piece, so that its pieces hang together. Immutable.
 */
public final class PassSoFar {
  private static final PassSoFar NOTHING = new PassSoFar(Optional.empty(), Optional.empty());

  private final Optional<Long> lastThere;
  private final Optional<Long> firstBack;

  /**
   * The nodes at both ends of what was learned.
   *
   * @param first passed; empty if none was
   * @param last passed; empty if none was
   */
  record Ends(Optional<Long> first, Optional<Long> last) {}

  PassSoFar(Optional<Long> lastThere, Optional<Long> firstBack) {
    this.lastThere = lastThere;
    this.firstBack = firstBack;
  }

  /** Nothing was learned of it. */
  public static PassSoFar nothing() {
    return NOTHING;
  }

  /** The node that the pass went by last. */
  Optional<Long> lastThere() {
    return lastThere;
  }

  /** The node that somebody who comes back along the pass goes by first. */
  Optional<Long> firstBack() {
    return firstBack;
  }
}
