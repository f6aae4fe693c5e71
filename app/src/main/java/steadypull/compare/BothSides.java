package steadypull.compare;

/**
 * The same for either side. Immutable if what it holds is.
 *
 * @param before the change
 * @param after the change
 */
record BothSides<T>(T before, T after) {
  /** That of one side. */
  T of(Side side) {
    return switch (side) {
      case BEFORE -> before;
      case AFTER -> after;
    };
  }
}
