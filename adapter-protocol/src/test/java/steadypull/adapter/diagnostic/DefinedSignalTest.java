package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.adapter.frame.Payload;

/** A vehicle's own signals, defined by data alone (contracts: as signal tables are written). */
class DefinedSignalTest {

  // Oracle: the data as one long number, shifted and masked by arithmetic without any bit loops.
  @Test
  void anyFieldOfAnyDataIsCutOutLikeANumberFromALongNumber() {
    long seed = 20260716;
    Random random = new Random(seed);
    for (int round = 0; round < 5_000; round++) {
      byte[] bytes = new byte[random.nextInt(9)];
      random.nextBytes(bytes);
      int firstBit = random.nextInt(40);
      int bitLength = 1 + random.nextInt(32);
      boolean signed = random.nextBoolean();
      Payload data = Payload.of(bytes);

      assertThat(plain(firstBit, bitLength, signed).decode(data).map(SignalValue::value))
          .as("seed %d, %s from %d, %d bits, %s", seed, data, firstBit, bitLength, signed)
          .isEqualTo(oracle(bytes, firstBit, bitLength, signed));
    }
  }

  private static Optional<Double> oracle(
      byte[] bytes, int firstBit, int bitLength, boolean signed) {
    int behind = bytes.length * 8 - firstBit - bitLength;
    if (behind < 0) {
      return Optional.empty();
    }
    BigInteger field =
        new BigInteger(1, bytes).shiftRight(behind).mod(BigInteger.TWO.pow(bitLength));
    boolean isNegative = signed && field.testBit(bitLength - 1);
    return Optional.of(
        (isNegative ? field.subtract(BigInteger.TWO.pow(bitLength)) : field).doubleValue());
  }

  private static DefinedSignal plain(int firstBit, int bitLength, boolean signed) {
    return new DefinedSignal(
        0x1E1C, "7E1", "field", firstBit, bitLength, signed, 1, 0, "1", -1e10, 1e10);
  }

  @Test
  void scaleOffsetAndRangeAreThoseOfTheDefinition() {
    DefinedSignal fluid =
        new DefinedSignal(0x1E1C, "7E1", "fluid", 0, 16, false, 0.0625, -40, "degC", -40, 200);

    // 0x0820 = 2080; 2080 / 16 - 40 = 90. 0x0F00 = 3840; 3840 / 16 - 40 = 200, the last allowed.
    assertThat(fluid.decode(Payload.ofHex("0820")).orElseThrow().value()).isEqualTo(90);
    assertThat(fluid.decode(Payload.ofHex("0F00")).orElseThrow().value()).isEqualTo(200);
    assertThat(fluid.decode(Payload.ofHex("0F01"))).isEmpty();
    assertThat(fluid.decode(Payload.ofHex("0820")).orElseThrow().signal())
        .isEqualTo(new Signal("22.1E1C.0", "fluid", "degC"));
  }

  @Test
  void definitionsThatCannotBeReadAreRefused() {
    assertThatThrownBy(() -> plain(-1, 8, false)).hasMessageContaining("1 to 32 bits from bit 0");
    assertThatThrownBy(() -> plain(0, 33, false)).hasMessageContaining("33 bits");
    assertThatThrownBy(() -> plain(0, 0, false)).hasMessageContaining("0 bits");
    assertThatThrownBy(() -> new DefinedSignal(0x1FFFF, "7E1", "x", 0, 8, false, 1, 0, "1", 0, 1))
        .hasMessageContaining("1ffff");
    assertThatThrownBy(
            () -> new DefinedSignal(1, "7E1", "x", 0, 8, false, Double.NaN, 0, "1", 0, 1))
        .hasMessageContaining("NaN");
    assertThatThrownBy(() -> new DefinedSignal(1, "7E1", "x", 0, 8, false, 1, 0, "1", 5, 5))
        .hasMessageContaining("5.0 to 5.0");
  }
}
