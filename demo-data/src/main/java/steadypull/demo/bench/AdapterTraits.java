package steadypull.demo.bench;

import java.util.Set;

/**
 * What kind of adapter stands on the bench.
 *
 * @param traits how it differs from one that does everything
 * @param baud of its serial line, 1200 to 4,000,000, ten bits a character
 */
record AdapterTraits(Set<AdapterTrait> traits, int baud) {
  static final AdapterTraits USUAL = new AdapterTraits(Set.of(), 115_200);

  private static final double NANOS = 1e9;
  private static final int BITS_PER_CHARACTER = 10;

  AdapterTraits {
    traits = Set.copyOf(traits);
    if (baud < 1200 || baud > 4_000_000) {
      throw new IllegalArgumentException("baud lies between 1200 and 4000000, found " + baud);
    }
    if (traits.contains(AdapterTrait.SERIAL_CAN) && traits.size() > 1) {
      throw new IllegalArgumentException("serial-can stands alone, found " + traits);
    }
  }

  boolean has(AdapterTrait trait) {
    return traits.contains(trait);
  }

  /** Whether the adapter does not know a command, given without AT and blanks. */
  boolean refuses(String command) {
    return traits.stream().anyMatch(trait -> trait.refuses(command));
  }

  /** How long the serial line takes for a character. */
  long characterNanos() {
    return Math.round(BITS_PER_CHARACTER * NANOS / baud);
  }
}
