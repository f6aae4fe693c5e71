package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The gate before a serial CAN adapter. Identifiers of requests: ISO 15765-4; frame kinds: ISO
 * 15765-2; services that read: SAE J1979 and ISO 14229-1, as the reference sheets give them.
 */
class SerialCanGateTest {
  private static final Set<Integer> READING_SERVICES =
      Set.of(0x01, 0x02, 0x03, 0x07, 0x09, 0x0A, 0x22);
  private static final Set<String> SETTINGS = Set.of("V", "N", "F", "C", "O", "Z0", "S5", "S6");

  private final List<String> sent = new ArrayList<>();
  private final ReadOnlyGate gate = ReadOnlyGate.before(new Wire());

  @BeforeEach
  void guard() {
    gate.guardSerialCan();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "V",
        "N",
        "F",
        "C",
        "O",
        "Z0",
        "S5",
        "S6",
        "t7DF8 02010C0000000000",
        "t7DF8 0701040C0D050B0F",
        "t7DF8 0103000000000000",
        "t7DF8 0209020000000000",
        "t7DF8 0302050000000000",
        "t7E08 0322F19000000000",
        "t7E78 0722F40CF40DF405",
        "T18DB33F18 02010C0000000000",
        "T18DA10F18 0322F19000000000",
        "t7E08 3000000000000000",
        "t7E08 3100000000000000",
        "t7E08 3200000000000000",
        "t7E08 300F140000000000",
        "T18DA10F18 3000000000000000"
      })
  void whatOnlyReadsPasses(String line) throws LinkException {
    String bare = line.replace(" ", "");
    gate.write(bytes(bare + "\r"));

    assertThat(sent).containsExactly(bare + "\r");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // Services that clear, write, control.
        "t7DF8 0104000000000000",
        "t7E08 0210030000000000",
        "t7E08 0211010000000000",
        "t7E08 0227010000000000",
        "t7E08 042EF19000000000",
        "t7E08 0414FFFFFF000000",
        "t7E08 0431010203000000",
        "t7E08 023E000000000000",
        "t7E08 0319020D00000000",
        // A permitted service with the wrong length, or something behind its length.
        "t7DF8 0101000000000000",
        "t7DF8 0222F10000000000",
        "t7DF8 0203040000000000",
        "t7DF8 02010C0400000000",
        "t7DF8 0103000000000004",
        "t7DF8 00010C0000000000",
        "t7DF8 0801040C0D050B0F",
        "t7DF8 0F01040C0D050B0F",
        // Multi-frame requests: first, consecutive; reserved kinds.
        "t7E08 100A22F40CF40DF4",
        "t7E08 2105F40B00000000",
        "t7E08 4000000000000000",
        // Flow control: to everybody, of a reserved status, with something in its filler.
        "t7DF8 3000000000000000",
        "T18DB33F18 3000000000000000",
        "t7E08 3300000000000000",
        "t7E08 3000000400000000",
        // Addresses of answers, of other buses, of the tester itself.
        "t7E88 02010C0000000000",
        "t7EF8 3000000000000000",
        "t0008 02010C0000000000",
        "t7218 02010C0000000000",
        "T18DAF1108 02010C0000000000",
        "T18DAF1F18 02010C0000000000",
        "T18FEF1008 02010C0000000000",
        "T000007DF8 02010C0000000000",
        // Shapes: other lengths, small digits, remote frames, a time stamp.
        "t7DF3 02010C",
        "t7df8 02010c0000000000",
        "t7DF8 02010C000000000",
        "t7DF8 02010C00000000001234",
        "r7DF8",
        "R18DB33F18",
        "r7DF0",
        // Settings that store, filter, listen only, change the timing, or of other makes.
        "L",
        "Z1",
        "S0",
        "S4",
        "S7",
        "S8",
        "s031C",
        "M00000000",
        "mFFFFFFFF",
        "X1",
        "P",
        "A",
        "Q1",
        "U1",
        "W2",
        "E0",
        "v",
        "c",
        "o",
        "",
        "VV",
        // The other dialogue.
        "ATZ",
        "ATI",
        "010C",
        "0902",
        "03",
        "22F190"
      })
  void everythingElseIsRefusedAndNotSent(String line) {
    String bare = line.replace(" ", "");
    assertThat(ReadOnlyGate.permitsSerialCan(bare)).isFalse();
    assertThatThrownBy(() -> gate.write(bytes(bare + "\r")))
        .isInstanceOf(RefusedRequestException.class)
        .hasMessageContaining("Nothing was sent");
    assertThat(sent).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"V", "V\r\r", "\rV\r", "V\n", "V\r\n", "C\rt7DF80104000000000000\r", "\r"})
  void writeIsExactlyOneLine(String text) {
    assertThatThrownBy(() -> gate.write(bytes(text))).isInstanceOf(RefusedRequestException.class);
    assertThat(sent).isEmpty();
  }

  // A frame line means nothing to an AT-command adapter, but C and F are hex digits there.
  @Test
  void beforeTheAdapterIsKnownOnlyTheVersionQuestionPasses() throws LinkException {
    ReadOnlyGate fresh = ReadOnlyGate.before(new Wire());
    for (String line : List.of("C", "F", "O", "N", "S6", "Z0", "t7DF802010C0000000000")) {
      assertThatThrownBy(() -> fresh.write(bytes(line + "\r")))
          .as(line)
          .isInstanceOf(RefusedRequestException.class);
    }
    fresh.write(bytes("V\r"));

    assertThat(sent).containsExactly("V\r");
  }

  @Test
  void everyServiceIsDecidedByItsNumberAlone() {
    for (int service = 0; service <= 0xFF; service++) {
      boolean passesInSomeShape = false;
      for (int length = 1; length <= 7; length++) {
        String data = "%02X%02X".formatted(length, service) + "00".repeat(6);
        passesInSomeShape |= ReadOnlyGate.permitsSerialCan("t7E08" + data);
      }
      assertThat(passesInSomeShape)
          .as("%02X", service)
          .isEqualTo(READING_SERVICES.contains(service));
    }
  }

  @Test
  void randomLinesThatPassAreQuestionsOfReadingServicesOrFlowControl() {
    long seed = 20_262;
    Random random = new Random(seed);
    int passed = 0;
    for (int round = 0; round < 400_000; round++) {
      String line = randomLine(random);
      if (ReadOnlyGate.permitsSerialCan(line)) {
        passed++;
        assertThat(isReading(line)).as("seed %d, line \"%s\"", seed, line).isTrue();
      }
    }
    assertThat(passed).as("seed %d must also reach lines that pass", seed).isGreaterThan(500);
  }

  private static String randomLine(Random random) {
    String head =
        pick(random, "t7DF8", "t7E08", "t7E78", "T18DB33F18", "T18DA10F18", "t7E88", "S", "");
    StringBuilder line = new StringBuilder(head);
    int bytes = random.nextInt(20) == 0 ? random.nextInt(12) : 8;
    line.append("%02X".formatted(random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(8)));
    for (int i = 1; i < bytes; i++) {
      int value = random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(11);
      line.append(random.nextBoolean() && i > 2 ? "00" : "%02X".formatted(value));
    }
    if (random.nextInt(5) == 0) {
      int at = random.nextInt(line.length());
      line.setCharAt(at, (char) (random.nextInt(96) + 32));
    }
    return line.toString();
  }

  private static String pick(Random random, String... choices) {
    return choices[random.nextInt(choices.length)];
  }

  /** Said without the gate's patterns: takes the frame apart as a CAN controller would. */
  private static boolean isReading(String line) {
    if (SETTINGS.contains(line)) {
      return true;
    }
    int digits = line.charAt(0) == 't' ? 3 : 8;
    int identifier = Integer.parseInt(line.substring(1, 1 + digits), 16);
    String data = line.substring(2 + digits);
    int[] bytes = new int[8];
    for (int i = 0; i < 8; i++) {
      bytes[i] = Integer.parseInt(data.substring(2 * i, 2 * i + 2), 16);
    }
    boolean isWhole = data.length() == 16 && line.charAt(1 + digits) == '8';
    boolean isToOne =
        digits == 3
            ? identifier >= 0x7E0 && identifier <= 0x7E7
            : identifier >>> 16 == 0x18DA
                && (identifier & 0xFF) == 0xF1
                && ((identifier >> 8) & 0xFF) != 0xF1;
    boolean isToAll = digits == 3 ? identifier == 0x7DF : identifier == 0x18DB33F1;
    boolean isSingle = bytes[0] >= 1 && bytes[0] <= 7 && READING_SERVICES.contains(bytes[1]);
    boolean isFlowControl = bytes[0] >= 0x30 && bytes[0] <= 0x32;
    return isWhole && ((isSingle && (isToAll || isToOne)) || (isFlowControl && isToOne));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Keeps what reaches it. */
  private final class Wire implements Link {
    @Override
    public String address() {
      return "wire";
    }

    @Override
    public void write(byte[] bytes) {
      sent.add(new String(bytes, StandardCharsets.ISO_8859_1));
    }

    @Override
    public byte[] read(Duration patience) {
      return new byte[0];
    }

    @Override
    public void close() {}
  }
}
