package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.link.LinkException;

/** Serial CAN adapters and vehicles that tell by identifier, against the reader itself. */
@Timeout(300)
class SerialCanOnTheBenchTest {
  private static final String DRIVE = "demo:long-hot-grade?speed=max&start=300";
  private static final String SERIAL_CAN = "&adapter=serial-can";
  private static final String VIN = "1ZZTP9AG1R0000042";
  private static final DefinedSignal FLUID =
      new DefinedSignal(
          0x1E1C, "7E1", "gearbox fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);

  /** Quantities that change little in a second. */
  private static final Set<String> SLOW =
      Set.of(
          "01.05",
          "01.0F",
          "01.33",
          "01.46",
          "01.5C",
          "01.63",
          "01.67.2",
          "01.75.2",
          "01.77.1",
          "22.1E1C.0");

  private static final Set<String> FAST = Set.of("01.04", "01.0C", "01.0D", "01.49", "01.87.1");

  @Test
  void sameDriveGivesTheSameReadingsOverBothDialogues() {
    Told byText = read(DRIVE, 60);
    Told byFrames = read(DRIVE + SERIAL_CAN, 60);

    assertThat(byFrames.signals()).isEqualTo(byText.signals()).hasSizeGreaterThan(13);
    for (String signal : byText.signals()) {
      double ofText = byText.of(signal).size();
      assertThat((double) byFrames.of(signal).size())
          .as("number of readings of " + signal)
          .isCloseTo(ofText, within(0.15 * ofText + 3));
    }
    assertThat(comparedWithNearest(byFrames, byText)).isGreaterThan(200);
  }

  /** Every slow reading against the nearest in time of the other drive; how many were. */
  private static int comparedWithNearest(Told some, Told others) {
    int compared = 0;
    for (Reading one : some.readings) {
      if (SLOW.contains(one.signal().key())) {
        Reading other =
            others.of(signal(one)).stream()
                .min(Comparator.comparingLong(r -> Math.abs(r.nanoTime() - one.nanoTime())))
                .orElseThrow();
        // A step of the sensor, its noise, and up to five seconds of a slow class.
        assertThat(one.value()).as(signal(one)).isCloseTo(other.value(), within(2.5));
        compared++;
      }
    }
    return compared;
  }

  @Test
  void everyCanVehicleIsReadByFrames() {
    for (int protocol = 6; protocol <= 9; protocol++) {
      Told told = read(DRIVE + SERIAL_CAN + "&protocol=" + protocol, 15);

      LinkState.Connected connected = told.connected();
      assertThat(connected.vin()).as("protocol %d", protocol).isEqualTo(VIN);
      assertThat(connected.protocol())
          .isEqualTo(
              "ISO 15765-4 (CAN %d/%d)"
                  .formatted(protocol % 2 == 0 ? 11 : 29, protocol < 8 ? 500 : 250));
      assertThat(told.signals()).anyMatch(signal -> signal.endsWith("01.0C"));
    }
  }

  @Test
  void olderBusIsSilentBehindSuchAnAdapter() {
    Told told = read(DRIVE + SERIAL_CAN + "&protocol=5", 30);

    assertThat(told.readings).isEmpty();
    assertThat(told.states).anyMatch(LinkState.VehicleSilent.class::isInstance);
  }

  // SAE J1979-2, from memory, not verified.
  @Test
  void vehicleThatTellsByIdentifierIsReadLikeTheUsualOne() {
    Told usual = read(DRIVE, 40);
    for (String setting : List.of("", SERIAL_CAN, SERIAL_CAN + "&protocol=7", "&protocol=9")) {
      Told told = read(DRIVE + "&diagnostics=uds" + setting, 40);

      assertThat(told.connected().vin()).as(setting).isEqualTo(VIN);
      assertThat(told.connected().protocol()).as(setting).endsWith("by identifier");
      assertThat(told.keys()).as(setting).containsAll(withoutOwn(usual.keys()));
      assertThat(told.of("01.0C").size()).as(setting).isGreaterThan(usual.of("01.0C").size() / 2);
    }
  }

  private static Set<String> withoutOwn(Set<String> keys) {
    return keys.stream().filter(key -> key.startsWith("01.")).collect(Collectors.toSet());
  }

  @Test
  void controlUnitsThatAnswerLateOrAskForPatienceAreRead() {
    Told told = read(DRIVE + SERIAL_CAN + "&latency=45&fault=pending@0-60", 30);

    assertThat(told.of("01.77.1")).hasSizeGreaterThan(15);
    assertThat(told.of("22.1E1C.0")).isNotEmpty();
  }

  @Test
  void framesThatAreLostSwappedOrMixedGiveNoWrongReadingAndNoEnd() {
    for (String fault :
        List.of(
            "missing-frame",
            "wrong-sequence",
            "interleaved",
            "padding",
            "can-error",
            "bus-error",
            "buffer-full",
            "nuls",
            "lv-reset",
            "reboot",
            "vanish",
            "silent",
            "nonsense")) {
      Told told = read(DRIVE + SERIAL_CAN + "&fault=" + fault + "@20-30", 90);

      assertThat(told.between(5, 19)).as(fault).isNotEmpty();
      assertThat(told.between(70, 90)).as(fault).isNotEmpty();
      assertThat(comparedWithNearest(told, read(DRIVE, 90))).as(fault).isPositive();
    }
  }

  private static String signal(Reading reading) {
    return reading.controlUnit() + " " + reading.signal().key();
  }

  private static Told read(String address, double seconds) {
    Set<String> wanted = new TreeSet<>(SLOW);
    wanted.addAll(FAST);
    Told told = new Told(seconds);
    try {
      VehicleReader reader =
          new VehicleReader(
              new BenchLinks().find(address).orElseThrow(),
              new ReaderSettings(wanted, List.of(FLUID), ReaderSettings.Pace.POLITE),
              told);
      told.reader = Optional.of(reader);
      reader.run();
    } catch (LinkException malformed) {
      throw new AssertionError(malformed);
    }
    return told;
  }

  /** What a reader told until a time. */
  private static final class Told implements ReaderListener {
    private final List<Reading> readings = new ArrayList<>();
    private final List<LinkState> states = new ArrayList<>();
    private final double untilSeconds;
    private Optional<VehicleReader> reader = Optional.empty();

    Told(double untilSeconds) {
      this.untilSeconds = untilSeconds;
    }

    @Override
    public void reading(Reading reading) {
      readings.add(reading);
      endAt(reading.nanoTime());
    }

    @Override
    public void linkState(LinkState state, long nanoTime) {
      states.add(state);
      endAt(nanoTime);
    }

    private void endAt(long nanoTime) {
      if (nanoTime / 1e9 >= untilSeconds) {
        reader.ifPresent(VehicleReader::close);
      }
    }

    LinkState.Connected connected() {
      return states.stream()
          .filter(LinkState.Connected.class::isInstance)
          .map(LinkState.Connected.class::cast)
          .findFirst()
          .orElseThrow(() -> new AssertionError("never connected"));
    }

    Set<String> signals() {
      return readings.stream()
          .map(SerialCanOnTheBenchTest::signal)
          .collect(Collectors.toCollection(TreeSet::new));
    }

    Set<String> keys() {
      return readings.stream().map(r -> r.signal().key()).collect(Collectors.toSet());
    }

    /** Readings of a signal, with or without its control unit before the key. */
    List<Reading> of(String signal) {
      return readings.stream()
          .filter(r -> signal(r).equals(signal) || r.signal().key().equals(signal))
          .toList();
    }

    List<Reading> between(double fromSeconds, double untilSeconds) {
      return readings.stream()
          .filter(r -> r.nanoTime() / 1e9 >= fromSeconds && r.nanoTime() / 1e9 <= untilSeconds)
          .toList();
    }
  }
}
