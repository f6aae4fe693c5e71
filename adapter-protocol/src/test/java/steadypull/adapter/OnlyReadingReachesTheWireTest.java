package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.diagnostic.DefinedSignal;

/**
 * Whatever is asked of the module's public entries and whatever an adapter says, only reading
 * requests and listed set-up lines reach the wire. Judged by {@link WireOracle}, not by the gate.
 */
class OnlyReadingReachesTheWireTest {
  private static final String[] HEADERS = {
    "7E0",
    "7E1",
    "7e1",
    "7DF",
    "18DA18F1",
    "18DB33F1",
    "DA10F1",
    "DB33F1",
    "",
    " ",
    "7E8",
    "7EF",
    "04",
    "7E0\r04",
    "7E0\r",
    "18DAF118",
    "18FEF100",
    "000",
    "FFF",
    "123",
    "7E0 04",
    "ATZ",
    "CAF0",
    "1\r2",
    "7E0\u0000",
    "\uFF17\uFF25\uFF10",
    "7E0;14FFFFFF",
    "68 6A F1",
    "686AF1",
    "C233F1"
  };
  private static final int USES = 400;

  @Test
  void whateverTheSettingsAndTheAdapterSay() {
    long seed = 20_260_715;
    Random random = new Random(seed);
    int written = 0;
    int readers = 0;
    for (int round = 0; round < 250; round++) {
      HostileAdapter adapter = hostile(random);
      try {
        VehicleReader reader = new VehicleReader(adapter, settings(random), new Recording());
        adapter.onEnough = reader::close;
        readers++;
        reader.run();
        // Who closes a reader that opens its port interrupts it; the next one is to run.
        Thread.interrupted();
      } catch (IllegalArgumentException refusedBeforeAnythingWasSent) {
        assertThat(adapter.written).as("seed %d, round %d", seed, round).isEmpty();
      }
      assertOnlyReading(adapter, "seed %d, round %d".formatted(seed, round));
      written += adapter.written.size();
    }
    assertThat(readers).as("seed %d: readers that ran", seed).isGreaterThan(100);
    assertThat(written).as("seed %d: lines on the wire", seed).isGreaterThan(10_000);
  }

  @Test
  void whateverAnAdapterSaysWhenItIsProbed() {
    long seed = 7_815;
    Random random = new Random(seed);
    for (int round = 0; round < 250; round++) {
      HostileAdapter adapter = hostile(random);
      AdapterProbe.probe(adapter);
      assertOnlyReading(adapter, "seed %d, round %d".formatted(seed, round));
    }
  }

  // The oracle must be able to say no; the first line of each pair reads, the second does not.
  @ParameterizedTest
  @ValueSource(
      strings = {
        "010C|04",
        "01040B|0804",
        "0902|1003",
        "22F190|2EF1900102",
        "ATZ|ATSP6",
        "ATCAF1|ATCAF0",
        "ATSH7E0|ATSH7E8",
        "ATTPA6|ATTPB",
        "ATST19|ATSTPX",
        "22F1901|3E00",
        "t7DF802010C0000000000|t7DF8010400000000000",
        "t7E083000000000000000|t7E0810140102030405",
        "T18DA10F180322F19000000000|T18DA10F18022EF1900000000"
      })
  void oracleTellsReadingFromTheRest(String pair) {
    String[] lines = pair.split("\\|", -1);
    assertThat(WireOracle.fault(line(lines[0]))).isEmpty();
    assertThat(WireOracle.fault(line(lines[1]))).isPresent();
    assertThat(WireOracle.fault(line(lines[0] + "\r" + lines[1]))).isPresent();
    assertThat(WireOracle.fault(lines[0].getBytes(StandardCharsets.ISO_8859_1))).isPresent();
  }

  private static byte[] line(String text) {
    return (text + "\r").getBytes(StandardCharsets.ISO_8859_1);
  }

  private static void assertOnlyReading(HostileAdapter adapter, String description) {
    for (byte[] line : adapter.written) {
      assertThat(WireOracle.fault(line)).as(description).isEmpty();
    }
  }

  private static HostileAdapter hostile(Random random) {
    ScriptedDrive drive = new ScriptedDrive();
    for (String header : HEADERS) {
      drive.vehicle.fixed.put(header + " 221E1C", "7E9" + "0562" + "1E1C" + "1234" + "AAAA\r");
    }
    double[] hostilities = {0, 0.02, 0.1, 0.4, 0.9};
    return new HostileAdapter(
        drive.adapter, random, hostilities[random.nextInt(hostilities.length)], USES);
  }

  private static ReaderSettings settings(Random random) {
    Set<String> wanted = new HashSet<>();
    for (int i = random.nextInt(12); i > 0; i--) {
      wanted.add("01.%02X".formatted(random.nextInt(256)));
      wanted.add("01.%02X.%d".formatted(random.nextInt(256), random.nextInt(5)));
    }
    wanted.addAll(List.of("04", "22.F190", "01.04\r04", "AT", ""));
    List<DefinedSignal> defined = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      defined.add(signal(random));
    }
    ReaderSettings.Pace[] paces = ReaderSettings.Pace.values();
    return new ReaderSettings(wanted, defined, paces[random.nextInt(paces.length)]);
  }

  private static DefinedSignal signal(Random random) {
    // Readable headers twice as often, so that most readers run.
    String header =
        random.nextInt(3) == 0
            ? HEADERS[random.nextInt(HEADERS.length)]
            : HEADERS[random.nextInt(5)];
    int identifier = random.nextBoolean() ? 0x1E1C : random.nextInt(0x1_0000);
    String name = random.nextBoolean() ? "fluid" : "04\r14FFFFFF\r";
    return new DefinedSignal(
        identifier,
        header,
        name,
        random.nextInt(64),
        1 + random.nextInt(32),
        random.nextBoolean(),
        1,
        0,
        "degC",
        -1e9,
        1e9);
  }
}
