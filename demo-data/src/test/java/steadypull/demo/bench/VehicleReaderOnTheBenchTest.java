package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.SerialLinks;
import steadypull.adapter.link.TcpLinks;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** Reader and bench together: what is driven is what is read, whatever happens in between. */
@Timeout(60)
class VehicleReaderOnTheBenchTest {
  private static final DefinedSignal FLUID =
      new DefinedSignal(
          0x1E1C, "7E1", "gearbox fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);
  private static final Map<String, Sensor> SLOW_SENSORS =
      Map.of(
          "01.05", Sensor.ENGINE_COOLANT,
          "01.0F", Sensor.INTAKE_AIR,
          "01.33", Sensor.BAROMETER,
          "01.46", Sensor.OUTSIDE_AIR,
          "01.5C", Sensor.ENGINE_OIL,
          "01.63", Sensor.REFERENCE_TORQUE,
          "01.67.2", Sensor.CHARGE_COOLANT,
          "01.75.2", Sensor.CHARGE_AIR_IN,
          "01.77.1", Sensor.CHARGE_AIR_OUT,
          "22.1E1C.0", Sensor.GEARBOX_FLUID);
  private static final Set<String> WANTED =
      Set.of(
          "01.04", "01.05", "01.0B", "01.0C", "01.0D", "01.0F", "01.10", "01.33", "01.42", "01.46",
          "01.49", "01.5C", "01.5E", "01.61", "01.62", "01.63", "01.67.1", "01.67.2", "01.75.2",
          "01.77.1", "01.78.1", "01.78.2", "01.87.1", "01.8E", "01.A4.1");

  @Test
  void everythingWantedIsReadAndConnectedSaysWhichVehicle() {
    Log log = read("demo:long-hot-grade?speed=max&start=300", 40);

    Set<String> missing =
        WANTED.stream().filter(key -> log.readings(key).isEmpty()).collect(Collectors.toSet());
    assertThat(missing).isEmpty();
    assertThat(log.readings("22.1E1C.0")).hasSizeGreaterThan(15);
    LinkState.Connected connected = log.first(LinkState.Connected.class).orElseThrow();
    assertThat(connected.vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(connected.adapter()).contains(AtCommands.IDENTITY);
  }

  /** Slow quantities, compared at the time stamp: a step of the sensor and its noise apart. */
  @Test
  void readingsAreWhatTheVehiclesSensorsSaidAtTheirTimeStamp() {
    double start = 300;
    Log log = read("demo:long-hot-grade?speed=max&start=300&seed=9", 60);
    Drive drive = new Drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 9);

    int compared = 0;
    for (Reading reading : log.readings) {
      Sensor sensor = SLOW_SENSORS.get(reading.signal().key());
      if (sensor != null) {
        drive.advanceTo(start + reading.nanoTime() / 1e9);
        assertThat(reading.value())
            .as("%s at %d", reading.signal(), reading.nanoTime())
            .isCloseTo(drive.read(sensor), within(2.5));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(300);
  }

  @Test
  void controlUnitsAreKeptApart() {
    Log log = read("demo:long-hot-grade?speed=max&start=300", 20);

    assertThat(log.readings("01.0C")).allMatch(reading -> reading.controlUnit().equals("7E8"));
    assertThat(log.readings("01.A4.1")).allMatch(reading -> reading.controlUnit().equals("7E9"));
    assertThat(log.readings("22.1E1C.0")).allMatch(reading -> reading.controlUnit().equals("7E9"));
  }

  @Test
  void politeReaderAsksATemperatureAboutOnceASecond() {
    Log log = read("demo:cool-day?speed=max&start=300", 60);

    assertThat(log.readings("01.77.1")).hasSizeBetween(40, 80);
    assertThat(log.readings("01.0C").size()).isGreaterThan(log.readings("01.77.1").size());
  }

  @Test
  void sameSeedGivesTheSameReadingsAtTheSameTimes() {
    List<Reading> once = read("demo:long-hot-grade?speed=max&seed=3", 45).readings;

    assertThat(once).hasSizeGreaterThan(500);
    assertThat(read("demo:long-hot-grade?speed=3000&seed=3", 45).readings).isEqualTo(once);
  }

  @Test
  void portThatVanishesIsReportedAndReadAgainWhenItIsBack() {
    Log log = read("demo:cool-day?speed=max&start=300&fault=vanish@30-50", 110);

    assertThat(log.first(LinkState.Lost.class).orElseThrow().reason()).contains("port is gone");
    assertThat(log.readingsBetween(10, 29)).isNotEmpty();
    assertThat(log.readingsBetween(31, 49)).isEmpty();
    assertThat(log.readingsBetween(80, 110)).isNotEmpty();
  }

  @Test
  void sleepingVehicleIsSilentAndReadAgainWhenItWakes() {
    Log log = read("demo:cool-day?speed=max&start=300&fault=engine-off@30-60", 130);

    assertThat(log.first(LinkState.VehicleSilent.class)).isPresent();
    assertThat(log.readingsBetween(33, 59)).isEmpty();
    assertThat(log.readingsBetween(100, 130)).isNotEmpty();
  }

  @Test
  void nonsenseAndSilenceGiveNoReadingsAndPass() {
    for (String fault : List.of("nonsense", "silent")) {
      Log log = read("demo:cool-day?speed=max&start=300&fault=" + fault + "@30-60", 160);

      assertThat(log.readingsBetween(32, 60)).as(fault).isEmpty();
      assertThat(log.readingsBetween(130, 160)).as(fault).isNotEmpty();
    }
  }

  @Test
  void stuckEchoAndPendingAnswersDoNoHarm() {
    Log echo = read("demo:cool-day?speed=max&start=300&fault=echo", 30);
    Log pending = read("demo:cool-day?speed=max&start=300&fault=pending", 30);

    assertThat(echo.readings("01.77.1")).hasSizeGreaterThan(10);
    assertThat(pending.readings("22.1E1C.0")).hasSizeGreaterThan(5);
  }

  @Test
  void driveThatEndsLeavesASilentVehicle() {
    Log log = read("demo:dyno-pull?speed=max&start=180", 60);

    assertThat(log.readingsBetween(5, 19)).isNotEmpty();
    assertThat(log.readingsBetween(25, 60)).isEmpty();
    assertThat(log.last()).isInstanceOf(LinkState.VehicleSilent.class);
  }

  @Test
  void aliveIsSaidEverySecondWhateverHappens() {
    Log log = read("demo:cool-day?speed=max&start=300&fault=engine-off@20-60", 90);

    assertThat(log.longestSilenceSeconds()).isLessThanOrEqualTo(1.5);
  }

  @Test
  void pseudoTerminalIsReadLikeAnySerialPort() throws Exception {
    try (PseudoTerminal terminal = PseudoTerminal.serve("demo:cool-day?speed=1&start=300")) {
      readSome(new SerialLinks(), terminal.path());
    }
  }

  @Test
  void servedBenchIsReadOverTcp() throws Exception {
    try (BenchServer server = BenchServer.serve("demo:cool-day?speed=1&start=300", 0)) {
      readSome(new TcpLinks(), "tcp://localhost:" + server.port());
    }
  }

  private static void readSome(LinkProvider links, String address) throws Exception {
    Log log = new Log(Optional.of("01.77.1"));
    log.run(links.find(address).orElseThrow(), new ReaderSettings(WANTED, List.of(FLUID), FULL));

    assertThat(log.first(LinkState.Connected.class)).isPresent();
    assertThat(log.readings("01.77.1").getLast().value()).isBetween(20.0, 60.0);
  }

  private static final ReaderSettings.Pace FULL = ReaderSettings.Pace.FULL;

  private static Log read(String address, double seconds) {
    Log log = new Log(Optional.empty());
    log.untilSeconds = seconds;
    try {
      log.run(
          new BenchLinks().find(address).orElseThrow(),
          new ReaderSettings(WANTED, List.of(FLUID), ReaderSettings.Pace.POLITE));
    } catch (Exception malformed) {
      throw new AssertionError(malformed);
    }
    return log;
  }

  /** Everything that a reader told, until a time or a reading ends it. */
  private static final class Log implements ReaderListener {
    private final List<Reading> readings = new ArrayList<>();
    private final List<LinkState> states = new ArrayList<>();
    private final List<Long> signs = new ArrayList<>();
    private final Optional<String> lastKey;
    private double untilSeconds = Double.POSITIVE_INFINITY;
    private Optional<VehicleReader> reader = Optional.empty();

    /** Ends at a time only, or at the first reading of a key while connected. */
    Log(Optional<String> lastKey) {
      this.lastKey = lastKey;
    }

    void run(LinkSource source, ReaderSettings settings) {
      VehicleReader made = new VehicleReader(source, settings, this);
      reader = Optional.of(made);
      made.run();
    }

    @Override
    public void reading(Reading reading) {
      readings.add(reading);
      signs.add(reading.nanoTime());
      endAt(reading.nanoTime());
      if (lastKey.equals(Optional.of(reading.signal().key()))
          && first(LinkState.Connected.class).isPresent()) {
        close();
      }
    }

    @Override
    public void linkState(LinkState state, long nanoTime) {
      if (!(state instanceof LinkState.Closed)) {
        states.add(state);
        signs.add(nanoTime);
      }
      endAt(nanoTime);
    }

    private void endAt(long nanoTime) {
      if (nanoTime / 1e9 >= untilSeconds) {
        close();
      }
    }

    private void close() {
      reader.ifPresent(VehicleReader::close);
    }

    List<Reading> readings(String key) {
      return readings.stream().filter(reading -> reading.signal().key().equals(key)).toList();
    }

    List<Reading> readingsBetween(double fromSeconds, double untilSeconds) {
      return readings.stream()
          .filter(reading -> reading.nanoTime() / 1e9 >= fromSeconds)
          .filter(reading -> reading.nanoTime() / 1e9 <= untilSeconds)
          .toList();
    }

    <T extends LinkState> Optional<T> first(Class<T> kind) {
      return states.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }

    LinkState last() {
      return states.getLast();
    }

    double longestSilenceSeconds() {
      double longest = 0;
      for (int i = 1; i < signs.size(); i++) {
        longest = Math.max(longest, (signs.get(i) - signs.get(i - 1)) / 1e9);
      }
      return longest;
    }
  }
}
