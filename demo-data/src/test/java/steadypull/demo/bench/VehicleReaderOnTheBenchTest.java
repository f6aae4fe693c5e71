package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.SerialLinks;
import steadypull.adapter.link.TcpLinks;

/** Reader and bench together: what is driven is what is read, whatever happens in between. */
@Timeout(300)
class VehicleReaderOnTheBenchTest {
  @Test
  void everythingWantedIsReadAndConnectedSaysWhichVehicle() {
    ReaderLog log = ReaderLog.read("demo:long-hot-grade?speed=max&start=300", 40);

    Set<String> missing =
        ReaderLog.WANTED.stream()
            .filter(key -> log.readings(key).isEmpty())
            .collect(Collectors.toSet());
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
    ReaderLog log = ReaderLog.read("demo:long-hot-grade?speed=max&start=300&seed=9", 60);
    int compared = TrueReadings.compare(log.readings, "long-hot-grade", 9, start);

    assertThat(compared).isGreaterThan(300);
  }

  @Test
  void controlUnitsAreKeptApart() {
    ReaderLog log = ReaderLog.read("demo:long-hot-grade?speed=max&start=300", 20);

    assertThat(log.readings("01.0C")).allMatch(reading -> reading.controlUnit().equals("7E8"));
    assertThat(log.readings("01.A4.1")).allMatch(reading -> reading.controlUnit().equals("7E9"));
    assertThat(log.readings("22.1E1C.0")).allMatch(reading -> reading.controlUnit().equals("7E9"));
  }

  @Test
  void politeReaderAsksATemperatureAboutOnceASecond() {
    ReaderLog log = ReaderLog.read("demo:cool-day?speed=max&start=300", 60);

    assertThat(log.readings("01.77.1")).hasSizeBetween(40, 80);
    assertThat(log.readings("01.0C").size()).isGreaterThan(log.readings("01.77.1").size());
  }

  @Test
  void sameSeedGivesTheSameReadingsAtTheSameTimes() {
    List<Reading> once = ReaderLog.read("demo:long-hot-grade?speed=max&seed=3", 45).readings;

    assertThat(once).hasSizeGreaterThan(500);
    assertThat(ReaderLog.read("demo:long-hot-grade?speed=3000&seed=3", 45).readings)
        .isEqualTo(once);
  }

  @Test
  void portThatVanishesIsReportedAndReadAgainWhenItIsBack() {
    ReaderLog log = ReaderLog.read("demo:cool-day?speed=max&start=300&fault=vanish@30-50", 110);

    assertThat(log.first(LinkState.Lost.class).orElseThrow().reason()).contains("port is gone");
    assertThat(log.readingsBetween(10, 29)).isNotEmpty();
    assertThat(log.readingsBetween(31, 49)).isEmpty();
    assertThat(log.readingsBetween(80, 110)).isNotEmpty();
  }

  @Test
  void sleepingVehicleIsSilentAndReadAgainWhenItWakes() {
    ReaderLog log = ReaderLog.read("demo:cool-day?speed=max&start=300&fault=engine-off@30-60", 130);

    assertThat(log.first(LinkState.VehicleSilent.class)).isPresent();
    assertThat(log.readingsBetween(33, 59)).isEmpty();
    assertThat(log.readingsBetween(100, 130)).isNotEmpty();
  }

  @Test
  void nonsenseAndSilenceGiveNoReadingsAndPass() {
    for (String fault : List.of("nonsense", "silent")) {
      ReaderLog log =
          ReaderLog.read("demo:cool-day?speed=max&start=300&fault=" + fault + "@30-60", 160);

      assertThat(log.readingsBetween(32, 60)).as(fault).isEmpty();
      assertThat(log.readingsBetween(130, 160)).as(fault).isNotEmpty();
    }
  }

  @Test
  void stuckEchoAndPendingAnswersDoNoHarm() {
    ReaderLog echo = ReaderLog.read("demo:cool-day?speed=max&start=300&fault=echo", 30);
    ReaderLog pending = ReaderLog.read("demo:cool-day?speed=max&start=300&fault=pending", 30);

    assertThat(echo.readings("01.77.1")).hasSizeGreaterThan(10);
    assertThat(pending.readings("22.1E1C.0")).hasSizeGreaterThan(5);
  }

  @Test
  void driveThatEndsLeavesASilentVehicle() {
    ReaderLog log = ReaderLog.read("demo:dyno-pull?speed=max&start=180", 60);

    assertThat(log.readingsBetween(5, 19)).isNotEmpty();
    assertThat(log.readingsBetween(25, 60)).isEmpty();
    assertThat(log.last()).isInstanceOf(LinkState.VehicleSilent.class);
  }

  @Test
  void aliveIsSaidEverySecondWhateverHappens() {
    ReaderLog log = ReaderLog.read("demo:cool-day?speed=max&start=300&fault=engine-off@20-60", 90);

    assertThat(log.longestSilenceSeconds()).isLessThanOrEqualTo(1.5);
  }

  @Test
  void pseudoTerminalIsReadLikeAnySerialPort() throws Exception {
    try (PseudoTerminal terminal = PseudoTerminal.serve(SERVED)) {
      readSome(new SerialLinks(), terminal.path());
    }
  }

  @Test
  void servedBenchIsReadOverTcp() throws Exception {
    try (BenchServer server = BenchServer.serve(SERVED, 0)) {
      readSome(new TcpLinks(), "tcp://localhost:" + server.port());
    }
  }

  private static void readSome(LinkProvider links, String address) throws Exception {
    ReaderLog log = new ReaderLog(Optional.of("01.77.1"));
    log.run(links.find(address).orElseThrow(), ReaderLog.settings(FULL));

    assertThat(log.first(LinkState.Connected.class)).isPresent();
    assertThat(log.readings("01.77.1").getLast().value()).isBetween(20.0, 60.0);
  }

  /** Five times as fast as life: the adapter's own waiting is what such a test takes. */
  private static final String SERVED = "demo:cool-day?speed=5&start=300";

  private static final ReaderSettings.Pace FULL = ReaderSettings.Pace.FULL;
}
