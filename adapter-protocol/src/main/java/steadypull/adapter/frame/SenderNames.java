package steadypull.adapter.frame;

import java.util.HexFormat;

/**
 * Control units' addresses as text, made once for each. Only so many are kept that damaged headers
 * cannot fill the memory; ISO 15765-4 allows eight control units. Used by one thread.
 */
final class SenderNames {
  private static final int MOST_KEPT = 32;
  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private final int[] addresses = new int[MOST_KEPT];
  private final String[] names = new String[MOST_KEPT];
  private int count;

  /** The upper-case hex digits of an address, so many from the right. */
  String of(int address, int digits) {
    for (int i = 0; i < count; i++) {
      if (addresses[i] == address && names[i].length() == digits) {
        return names[i];
      }
    }
    String name = HEX.toHexDigits(Integer.toUnsignedLong(address), digits);
    if (count < MOST_KEPT) {
      addresses[count] = address;
      names[count] = name;
      count++;
    }
    return name;
  }
}
