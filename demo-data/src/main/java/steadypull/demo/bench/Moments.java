package steadypull.demo.bench;

import java.util.OptionalLong;

/** Compares moments that may not be known. */
final class Moments {
  private Moments() {}

  /** The earlier of two. */
  static OptionalLong earlier(OptionalLong one, OptionalLong other) {
    if (one.isEmpty() || other.isEmpty()) {
      return one.isEmpty() ? other : one;
    }
    return OptionalLong.of(Math.min(one.getAsLong(), other.getAsLong()));
  }
}
