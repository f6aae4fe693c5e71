package steadypull.demo.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * A third control unit, 7E2 / 7EA, that answers to much of what the engine answers to, with values
 * that can be told from the engine's: every byte is 01.
 */
final class TalkativeUnit {
  /** Parameters of SAE J1979 with their lengths. */
  private static final Map<Integer, Integer> LENGTHS =
      Map.of(
          0x04, 1, 0x05, 1, 0x0B, 1, 0x0C, 2, 0x0D, 1, 0x49, 1, 0x61, 1, 0x62, 1, 0x77, 5, 0x87, 5);

  private TalkativeUnit() {}

  static ControlUnit of(BenchVehicle vehicle) {
    Map<Integer, Supplier<byte[]>> data = new TreeMap<>();
    LENGTHS.forEach((number, length) -> data.put(number, () -> ones(length)));
    return new ControlUnit(
        0x28,
        0x7E2,
        vehicle.fitted(new Parameters(data)),
        new Information(
            Map.of(Information.NAME, List.of(Information.text("AFC\0-Aftertreatment", 20)))),
        Map.of(),
        1,
        new TroubleMemory(List.of()));
  }

  private static byte[] ones(int length) {
    byte[] ones = new byte[length];
    Arrays.fill(ones, (byte) 1);
    return ones;
  }
}
