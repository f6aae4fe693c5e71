package steadypull.demo.bench;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * The service 01 parameters of one control unit: number to data bytes, with the support maps that
 * follow from them. Layouts of the open signal set for SAE J1979 and the J1699-3 test cases, as the
 * sheet of services gives them; 16-bit values high byte first.
 */
final class Parameters {
  private final NavigableMap<Integer, Supplier<byte[]>> data = new TreeMap<>();

  Parameters(Map<Integer, Supplier<byte[]>> data) {
    this.data.putAll(data);
  }

  /** Number and data of every supported parameter asked for, in the order of the request. */
  byte[] answer(byte[] request) {
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    for (int i = 1; i < request.length; i++) {
      int number = request[i] & 0xFF;
      byte[] bytes = data(number);
      if (bytes.length > 0) {
        answer.write(number);
        answer.writeBytes(bytes);
      }
    }
    return answer.toByteArray();
  }

  /** The data of one parameter, or of a support map; empty if it is not supported. */
  byte[] data(int number) {
    if (number % 0x20 == 0) {
      return hasMap(number) ? map(data.navigableKeySet(), number) : new byte[0];
    }
    Supplier<byte[]> supplier = data.get(number);
    return supplier == null ? new byte[0] : supplier.get();
  }

  /** The data of all parameters as they are now. */
  Map<Integer, byte[]> snapshot() {
    Map<Integer, byte[]> now = new HashMap<>();
    data.forEach((number, supplier) -> now.put(number, supplier.get()));
    return now;
  }

  /** These parameters as far as their numbers are not greater. */
  Parameters upTo(int greatest) {
    return new Parameters(data.headMap(greatest, true));
  }

  private boolean hasMap(int base) {
    return base == 0 || data.lastKey() > base;
  }

  /** Bit 7 of A is base + 1, bit 0 of D says that the next map exists. */
  static byte[] map(SortedSet<Integer> numbers, int base) {
    long bits = 0;
    for (int number : numbers.subSet(base + 1, base + 0x20)) {
      bits |= 1L << (0x20 - (number - base));
    }
    if (!numbers.tailSet(base + 0x21).isEmpty()) {
      bits |= 1;
    }
    return number((double) bits, 4); // 32 bits fit a double exactly
  }

  /** A number in so many bytes, high byte first, clamped to what fits. */
  static byte[] number(double value, int bytes) {
    long greatest = (1L << (8 * bytes)) - 1;
    long whole = Math.clamp(Math.round(value), 0L, greatest);
    byte[] packed = new byte[bytes];
    for (int i = bytes - 1; i >= 0; i--) {
      packed[i] = (byte) whole;
      whole >>= 8;
    }
    return packed;
  }

  /** Parts one after the other. */
  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      joined.writeBytes(part);
    }
    return joined.toByteArray();
  }
}
