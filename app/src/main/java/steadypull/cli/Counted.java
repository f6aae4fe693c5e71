package steadypull.cli;

/** Numbers of things, in words. */
final class Counted {
  private Counted() {}

  static String trips(int count) {
    return count == 1 ? "1 trip" : count + " trips";
  }

  static String samples(long count) {
    return count == 1 ? "1 sample" : count + " samples";
  }

  static String stretches(int count) {
    return count == 1 ? "1 stretch" : count + " stretches";
  }

  static String of(long count, String one, String several) {
    return count + " " + (count == 1 ? one : several);
  }
}
