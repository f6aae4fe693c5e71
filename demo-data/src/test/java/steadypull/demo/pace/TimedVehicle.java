package steadypull.demo.pace;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One control unit of a towing vehicle with a compression-ignition engine, as the bench asks it:
 * which parameters of SAE J1979 service 01 it has and their data. The choice is common practice, no
 * source. Immutable.
 */
final class TimedVehicle {
  static final List<Integer> FAST = List.of(0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x61, 0x62);
  static final List<Integer> MEDIUM =
      List.of(0x05, 0x0F, 0x10, 0x11, 0x23, 0x5C, 0x5E, 0x67, 0x77, 0x78);
  static final List<Integer> SLOW = List.of(0x1F, 0x2F, 0x33, 0x42, 0x46, 0x63);

  private static final int MAP_STRIDE = 0x20;

  private final byte[][] data = new byte[0x100][];

  TimedVehicle() {
    for (List<Integer> kind : List.of(FAST, MEDIUM, SLOW)) {
      kind.forEach(number -> data[number] = bytes(number));
    }
    for (int map = 0; map < 0x80; map += MAP_STRIDE) {
      data[map] = map(map);
    }
  }

  private static byte[] bytes(int number) {
    return switch (number) {
      case 0x0C -> new byte[] {0x1F, 0x40};
      case 0x10, 0x1F, 0x23, 0x5E, 0x63 -> new byte[] {0x04, (byte) 0xB0};
      case 0x42 -> new byte[] {0x36, (byte) 0xB0};
      case 0x67 -> new byte[] {3, (byte) 0x80, 0x6E};
      case 0x77 -> new byte[] {15, 0x7A, 0x5C, 0x7B, 0x5D};
      case 0x78 -> new byte[] {15, 0x17, 0x0C, 0x12, 0x5C, 0x0F, (byte) 0xA0, 0x0F, 0x00};
      default -> new byte[] {0x5A};
    };
  }

  /** Bit 7 of the first byte is the parameter after the map; the last bit says that another map. */
  private byte[] map(int map) {
    byte[] bits = new byte[4];
    for (int bit = 0; bit < MAP_STRIDE; bit++) {
      boolean isNextMap = bit == MAP_STRIDE - 1 && map < 0x60;
      if (data[map + 1 + bit] != null || isNextMap) {
        bits[bit / 8] |= (byte) (0x80 >> bit % 8);
      }
    }
    return bits;
  }

  /** Data of a parameter; null if it is not supported. */
  byte[] data(int number) {
    return data[number];
  }

  /** Which class a parameter belongs to; empty text for support maps. */
  static String classOf(int number) {
    if (FAST.contains(number)) {
      return "fast";
    }
    return MEDIUM.contains(number) ? "medium" : SLOW.contains(number) ? "slow" : "";
  }

  /** Keys of all signals that the parameters carry. */
  static Set<String> signals() {
    Set<String> keys = new TreeSet<>();
    for (List<Integer> kind : List.of(FAST, MEDIUM, SLOW)) {
      kind.forEach(number -> keys.add("01.%02X".formatted(number)));
    }
    for (int sensor = 1; sensor <= 4; sensor++) {
      keys.add("01.67." + sensor);
      keys.add("01.77." + sensor);
      keys.add("01.78." + sensor);
    }
    return keys;
  }
}
