package steadypull.adapter.diagnostic;

import java.util.BitSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import steadypull.adapter.frame.Payload;

/**
 * Which parameters a control unit supports, from the answers to parameters 00, 20, 40 and so on.
 * Immutable.
 */
public final class SupportMap {
  /** Parameters per map; a multiple of it asks for the next map. */
  public static final int STRIDE = 0x20;

  private static final int MAP_BYTES = 4;

  private final BitSet supported;

  private SupportMap(BitSet supported) {
    this.supported = supported;
  }

  /** Nothing known to be supported. */
  public static SupportMap empty() {
    return new SupportMap(new BitSet());
  }

  /** Whether a parameter number is one of the maps themselves. */
  public static boolean isMap(int parameter) {
    return parameter % STRIDE == 0;
  }

  /**
   * Adds one map: bit 7 of the first byte is the parameter after the map's own number.
   *
   * @param mapParameter 0x00, 0x20, ... 0xE0
   * @param data four bytes; shorter data add nothing
   */
  public SupportMap with(int mapParameter, Payload data) {
    BitSet more = (BitSet) supported.clone();
    if (data.size() >= MAP_BYTES) {
      for (int bit = 0; bit < STRIDE; bit++) {
        if (((data.at(bit / 8) >> (7 - bit % 8)) & 1) == 1) {
          more.set(mapParameter + 1 + bit);
        }
      }
    }
    return new SupportMap(more);
  }

  /** Whether a parameter is supported; for a map, whether it exists. */
  public boolean supports(int parameter) {
    return supported.get(parameter);
  }

  /**
   * In how many parameters two tellings of one control unit contradict each other. A map that only
   * one of them has, or that tells nothing, contradicts nothing.
   */
  public int differencesFrom(SupportMap other) {
    return (int)
        mapsBegun()
            .filter(map -> other.mapsBegun().anyMatch(begun -> begun == map))
            .flatMap(map -> IntStream.rangeClosed(map + 1, map + STRIDE))
            .filter(parameter -> supports(parameter) != other.supports(parameter))
            .count();
  }

  /** Numbers of the maps that tell of something, rising. */
  private IntStream mapsBegun() {
    return supported.stream().map(parameter -> (parameter - 1) / STRIDE * STRIDE).distinct();
  }

  /** What both have, or one of them. */
  public SupportMap or(SupportMap other) {
    BitSet either = (BitSet) supported.clone();
    either.or(other.supported);
    return new SupportMap(either);
  }

  /** What is left without some parameters. */
  public SupportMap without(IntPredicate unwanted) {
    BitSet left = (BitSet) supported.clone();
    left.stream().filter(unwanted).forEach(left::clear);
    return new SupportMap(left);
  }

  /** The supported parameters without the maps, rising. */
  public IntStream parameters() {
    return supported.stream().filter(parameter -> !isMap(parameter));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SupportMap map && supported.equals(map.supported);
  }

  @Override
  public int hashCode() {
    return supported.hashCode();
  }

  @Override
  public String toString() {
    return supported.toString();
  }
}
