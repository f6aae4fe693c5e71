package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import steadypull.adapter.ReaderSettings;

/** The engine off for hours, behind adapters that fall asleep when left alone and others. */
@Timeout(300)
class EngineOffOnTheBenchTest {
  private static final double OFF = 300;
  private static final double ON = 2 * 3600;

  /** From the engine's start to the first readings, whatever the adapter did meanwhile. */
  private static final double LATEST = 120;

  static Stream<Set<AdapterTrait>> adapters() {
    return Stream.of(
        Set.of(),
        Set.of(AdapterTrait.SLEEPY),
        Set.of(AdapterTrait.NO_VOLTAGE),
        Set.of(AdapterTrait.SLEEPY, AdapterTrait.NO_VOLTAGE),
        Set.of(AdapterTrait.SERIAL_CAN));
  }

  @ParameterizedTest
  @MethodSource("adapters")
  void engineThatStartsAfterHoursIsReadAgainWhateverTheAdapterDid(Set<AdapterTrait> traits) {
    ReaderLog log = new ReaderLog(Optional.empty());
    log.untilSeconds = ON + LATEST;
    log.run(
        new Bench("demo:long-drive", settings(traits)),
        ReaderLog.settings(ReaderSettings.Pace.POLITE));

    assertThat(log.readingsBetween(0, OFF)).isNotEmpty();
    assertThat(log.readingsBetween(OFF + 30, ON)).isEmpty();
    assertThat(log.readingsBetween(ON, ON + LATEST)).isNotEmpty();
  }

  private static BenchSettings settings(Set<AdapterTrait> traits) {
    LongDrive drive = new LongDrive(Duration.ofHours(3), 1, BusProtocol.CAN_11_500, false);
    return new BenchSettings(
        drive.scenario(),
        OptionalDouble.empty(),
        1,
        0,
        VehicleTraits.USUAL,
        new AdapterTraits(traits, AdapterTraits.USUAL.baud()),
        new FaultPlan(List.of(new Fault(Fault.Kind.ENGINE_OFF, OFF, ON))));
  }
}
