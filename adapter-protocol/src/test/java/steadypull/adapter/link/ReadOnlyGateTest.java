package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nothing but reading requests reaches the vehicle, whatever the rest of the program does. */
class ReadOnlyGateTest {
  private static final Set<String> READING_SERVICES =
      Set.of("01", "02", "03", "07", "09", "0A", "22");

  private final Wire wire = new Wire();
  private final ReadOnlyGate gate = ReadOnlyGate.before(wire);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0100",
        "01 0C",
        "01040B0C0D0F05",
        "01 0c 1",
        "020500",
        "03",
        "07",
        "0A",
        "0902",
        "22F190",
        "22 1E1C 1E1D 1E1E",
        "ATZ",
        "at ws",
        "ATI",
        "ATE0",
        "ATL0",
        "ATS0",
        "ATH1",
        "ATCAF1",
        "ATAT1",
        "ATTP0",
        "ATTPA6",
        "ATDPN",
        "ATDP",
        "ATRV",
        "ATPC",
        "ATSH7E1",
        "ATSH 7DF",
        "ATSHDA18F1",
        "ATSHDB33F1",
        "ATSH6A8",
        "ATM0",
        "ATST19",
        "V"
      })
  void whatOnlyReadsPasses(String line) throws LinkException {
    gate.write(bytes(line + "\r"));

    assertThat(wire.lines).containsExactly(line + "\r");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "v",
        "V ",
        "04",
        "0 4",
        "041",
        "14FFFFFF",
        "08",
        "0801",
        "10 03",
        "11 01",
        "27 01",
        "28 03 01",
        "2E F1 90 00",
        "2F 12 34 03",
        "30 00 00",
        "31 01 12 34",
        "34",
        "3D",
        "3E 00",
        "85 02",
        "1003",
        "19 02 FF",
        "23 00",
        "2C 01",
        // Right service, wrong shape: longer than one frame, half a byte where a byte must be.
        "01",
        "0",
        "010",
        "01 00 11 22 33 44 55 66",
        "03 04",
        "22",
        "22F1",
        "0902 03",
        // Harmless, but nobody here needs them.
        "AT@1",
        "ATD",
        "ATIGN",
        "ATE1",
        "ATH0",
        "ATCRA7E8",
        "ATFCSH7E0",
        "ATFCSD300000",
        "ATFCSM1",
        // Identifiers of answers, of other buses, of nobody.
        "ATSH7E8",
        "ATSH7EF",
        "ATSH18DA18F1",
        "ATSH686AF1",
        "ATSHC233F1",
        "ATSH7E0\r04",
        // Settings that store, listen, send frames of their own or change what hex lines mean.
        "ATSP6",
        "ATSP0",
        "ATCAF0",
        "ATMA",
        "ATMR10",
        "ATMT10",
        "ATRTR",
        "ATWM8110F13E",
        "ATPP2DSV01",
        "ATPP FF ON",
        "ATBRD10",
        "ATBRT01",
        "ATLP",
        "ATSD01",
        "AT@3NAME",
        "ATCEA10",
        "ATFI",
        "ATSI",
        "ATKW0",
        "ATFCSD04",
        "ATFCSD2E0000",
        "ATFCSD30000000",
        "ATSH123",
        "ATSH000000",
        "ATSH18FEF1",
        "ATTPB",
        "ATTPA",
        "ATTPAA",
        "ATCP00",
        "ATM1",
        "ATST",
        "ATST1",
        "ATST190",
        "ATSTPX",
        "STPX",
        "AT",
        "",
        " ",
        ">",
        "?",
        "01\t0C",
        "0l0C",
        "010C;04",
        "010C\n04",
        "\u0000010C",
        "010C\u00A0",
        "\uFF10\uFF11\uFF10\uFF23"
      })
  void everythingElseIsRefusedAndNotSent(String line) {
    assertThat(ReadOnlyGate.permits(line)).isFalse();
    assertThatThrownBy(() -> gate.write(line.concat("\r").getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(RefusedRequestException.class)
        .hasMessageContaining("Nothing was sent");
    assertThat(wire.lines).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"010C", "010C\r04\r", "\r010C\r", "010C\r\r", "ATI\r04", "010C\r\n", "\r\r"})
  void writeIsExactlyOneLine(String text) {
    assertThatThrownBy(() -> gate.write(bytes(text))).isInstanceOf(RefusedRequestException.class);
    assertThat(wire.lines).isEmpty();
  }

  // A lone return repeats the last command: at first that may be one of another program.
  @Test
  void loneReturnPassesOnlyAfterALineOfOursWasAnswered() throws LinkException {
    assertThatThrownBy(() -> gate.write(bytes("\r"))).isInstanceOf(RefusedRequestException.class);
    wire.incoming = bytes("04\r44\r\r>");
    gate.read(Duration.ZERO);
    assertThatThrownBy(() -> gate.write(bytes("\r"))).isInstanceOf(RefusedRequestException.class);

    gate.write(bytes("ATI\r"));
    assertThatThrownBy(() -> gate.write(bytes("\r"))).isInstanceOf(RefusedRequestException.class);
    wire.incoming = bytes("NAME\r\r>");
    gate.read(Duration.ZERO);
    gate.write(bytes("\r"));

    assertThat(wire.lines).containsExactly("ATI\r", "\r");
  }

  @Test
  void everyServiceIsDecidedByItsNumberAlone() {
    for (int service = 0; service <= 0xFF; service++) {
      String first = "%02X".formatted(service);
      boolean passesInSomeShape = false;
      for (int length = 0; length <= 6; length++) {
        passesInSomeShape |= ReadOnlyGate.permits(first + "00".repeat(length));
      }
      assertThat(passesInSomeShape).as(first).isEqualTo(READING_SERVICES.contains(first));
    }
  }

  @Test
  void randomLinesThatPassAreReadingServicesHoweverTheyAreWritten() {
    long seed = 20_261;
    Random random = new Random(seed);
    String alphabet = "0123456789ABCDEFabcdef  \rATatSHZPMRW>?\u0000\t;";
    int passed = 0;
    for (int i = 0; i < 300_000; i++) {
      String line = randomLine(random, alphabet);
      if (ReadOnlyGate.permits(line)) {
        passed++;
        assertThat(isReading(line)).as("seed %d, line \"%s\"", seed, line).isTrue();
      }
    }
    assertThat(passed).as("seed %d must also reach lines that pass", seed).isGreaterThan(500);
  }

  // The line that goes out again and again is judged on its bytes: never more freely than others.
  @Test
  void whatPassesOnItsBytesPassesAsTextToo() {
    long seed = 12;
    Random random = new Random(seed);
    int passed = 0;
    for (int i = 0; i < 300_000; i++) {
      String line = "01" + randomLine(random, "0123456789ABCDEF0123456789abg \r\n;");
      if (CurrentDataLine.isOne(bytes(line + "\r"))) {
        passed++;
        assertThat(ReadRequests.permits(line)).as("seed %d, line \"%s\"", seed, line).isTrue();
      }
    }
    assertThat(passed).as("seed %d must also reach lines that pass", seed).isGreaterThan(5_000);
    for (String line :
        List.of("04", "01", "010", "0100 ", "01000", "0100112233445566", "0104\r04")) {
      assertThat(CurrentDataLine.isOne(bytes(line + "\r"))).as(line).isFalse();
    }
    assertThat(CurrentDataLine.isOne(bytes("01001122334455F\r"))).isTrue();
  }

  private static String randomLine(Random random, String alphabet) {
    StringBuilder line = new StringBuilder(random.nextBoolean() ? "0" : "");
    int length = random.nextInt(10);
    for (int i = 0; i < length; i++) {
      line.append(alphabet.charAt(random.nextInt(random.nextInt(3) == 0 ? alphabet.length() : 22)));
    }
    return line.toString();
  }

  /** Said without the gate's patterns: what an adapter sees once blanks and case are gone. */
  private static boolean isReading(String line) {
    String seen = line.replace(" ", "").toUpperCase(Locale.ROOT);
    if (seen.startsWith("AT")) {
      return seen.chars().allMatch(c -> (c >= '0' && c <= '9') || (c >= '@' && c <= 'Z'));
    }
    return seen.length() >= 2
        && seen.length() <= 15
        && READING_SERVICES.contains(seen.substring(0, 2))
        && seen.chars().allMatch(c -> Character.digit(c, 16) >= 0);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Keeps what reaches it. */
  private static final class Wire implements Link {
    final List<String> lines = new ArrayList<>();
    byte[] incoming = {};

    @Override
    public String address() {
      return "wire";
    }

    @Override
    public void write(byte[] bytes) {
      lines.add(new String(bytes, StandardCharsets.ISO_8859_1));
    }

    @Override
    public byte[] read(Duration patience) {
      return incoming.clone();
    }

    @Override
    public void close() {}
  }
}
