package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * What a control unit tells about itself and the vehicle, SAE J1979 service 09 (from memory, as the
 * sheet of services gives it): 02 the vehicle's identification number, 17 characters; 04 identities
 * of calibrations, 16 each; 06 their check numbers, 4 bytes each; 0A the unit's name, 20. Items of
 * one type are equally long. Immutable.
 */
final class Information {
  static final int VIN = 0x02;
  static final int CALIBRATION = 0x04;
  static final int CALIBRATION_CHECK = 0x06;
  static final int NAME = 0x0A;

  private final NavigableMap<Integer, List<byte[]>> itemsByType = new TreeMap<>();

  Information(Map<Integer, List<byte[]>> itemsByType) {
    this.itemsByType.putAll(itemsByType);
  }

  /** The items of a type, one after the other; empty if there is none. Type 00 is the map. */
  byte[] data(int type) {
    if (type == 0) {
      return Parameters.map(itemsByType.navigableKeySet(), 0);
    }
    return join(itemsByType.getOrDefault(type, List.of()).toArray(new byte[0][]));
  }

  /** How many items of a type there are; the map counts as one. */
  int count(int type) {
    return type == 0 ? 1 : itemsByType.getOrDefault(type, List.of()).size();
  }

  /** Characters, filled up with zeros behind. */
  static byte[] text(String characters, int length) {
    return Arrays.copyOf(characters.getBytes(StandardCharsets.US_ASCII), length);
  }
}
