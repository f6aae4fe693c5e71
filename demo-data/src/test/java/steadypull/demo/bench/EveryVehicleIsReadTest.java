package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.LinkState;

/** The reader on vehicles of every bus, and behind adapters that lack this or that. */
@Timeout(300)
class EveryVehicleIsReadTest {
  private static final double START = 300;
  private static final String VIN = "1ZZTP9AG1R0000042";
  private static final String DRIVE = "demo:long-hot-grade?speed=max&seed=9&start=300";

  @ParameterizedTest
  @EnumSource
  void vehicleOfEveryBusIsFoundAndReadTruly(BusProtocol protocol) {
    ReaderLog log = ReaderLog.read(DRIVE + "&protocol=" + protocol.number(), 60);

    LinkState.Connected connected = log.first(LinkState.Connected.class).orElseThrow();
    assertThat(connected.vin()).isEqualTo(VIN);
    assertThat(connected.protocol()).contains(protocol.words());
    assertThat(log.readings("01.0C")).hasSizeGreaterThan(30);
    assertThat(log.readings("01.05")).hasSizeGreaterThan(10);
    assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START))
        .isGreaterThan(protocol.isCan() ? 300 : 60);
    Set<String> units = protocol.isCan() && !protocol.isLong() ? Set.of("7E8", "7E9") : Set.of();
    if (!units.isEmpty()) {
      assertThat(log.readings).allMatch(reading -> units.contains(reading.controlUnit()));
    }
  }

  /** On the K-line a session that was lost by silence would show as BUS INIT again and again. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5})
  void politeReaderKeepsTheSessionOfTheKLine(int protocol) {
    ReaderLog log = ReaderLog.read(DRIVE + "&protocol=" + protocol, 90);

    assertThat(log.readingsBetween(60, 90)).hasSizeGreaterThan(60);
    assertThat(log.states).noneMatch(state -> state instanceof LinkState.VehicleSilent);
  }

  @ParameterizedTest
  @EnumSource(
      names = {"NO_HEADERS", "SHAM_HEADERS", "SERIAL_CAN"},
      mode = EnumSource.Mode.EXCLUDE)
  void adapterThatLacksSomethingIsReadAllTheSame(AdapterTrait trait) {
    ReaderLog log = ReaderLog.read(DRIVE + "&adapter=" + trait.word(), 60);

    assertThat(log.readingsBetween(30, 60)).hasSizeGreaterThan(200);
    assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START)).isGreaterThan(200);
  }

  /** Nobody tells whose answer a line is: only the engine's control unit is listened to. */
  @ParameterizedTest
  @CsvSource({
    "no-headers, 6", "no-headers, 7", "no-headers, 8", "no-headers, 9",
    "sham-headers, 6", "sham-headers, 7", "sham-headers, 8", "sham-headers, 9"
  })
  void adapterThatHidesWhoAnswersIsReadTrulyAndTheEngineOnly(String trait, int protocol) {
    ReaderLog log = ReaderLog.read(DRIVE + "&adapter=" + trait + "&protocol=" + protocol, 60);

    assertThat(log.first(LinkState.Connected.class).orElseThrow().vin()).isEqualTo(VIN);
    assertThat(log.readingsBetween(30, 60)).hasSizeGreaterThan(200);
    assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START)).isGreaterThan(200);
    assertThat(log.readings("01.0C")).hasSizeGreaterThan(100);
    assertThat(log.readings("01.A4.1")).as("only the gearbox tells its ratio").isEmpty();
  }

  // SAE J1979-2, from memory, not verified.
  @ParameterizedTest
  @ValueSource(ints = {6, 7, 8, 9})
  void vehicleThatTellsByIdentifierIsReadTrulyOnEveryCan(int protocol) {
    ReaderLog log = ReaderLog.read(DRIVE + "&diagnostics=uds&protocol=" + protocol, 60);

    LinkState.Connected connected = log.first(LinkState.Connected.class).orElseThrow();
    assertThat(connected.vin()).isEqualTo(VIN);
    assertThat(connected.protocol()).endsWith("by identifier");
    assertThat(log.readingsBetween(30, 60)).hasSizeGreaterThan(200);
    assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START)).isGreaterThan(200);
    assertThat(log.readings("01.A4.1")).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"baud=38400&latency=25", "baud=2000000&latency=2", "baud=9600"})
  void everySpeedOfLineAndControlUnitIsRead(String settings) {
    ReaderLog log = ReaderLog.read(DRIVE + "&" + settings, 60);

    assertThat(log.readingsBetween(30, 60)).hasSizeGreaterThan(200);
    assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START)).isGreaterThan(200);
  }
}
