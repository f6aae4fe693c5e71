package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import steadypull.adapter.ReaderSettings;

/** The engine off for hours, behind an adapter that falls asleep when it is left alone. */
@Timeout(60)
class EngineOffOnTheBenchTest {
  private static final double OFF = 300;
  private static final double ON = 2 * 3600;

  /** From the engine's start to the first readings, whatever the adapter did meanwhile. */
  private static final double LATEST = 120;

  @Test
  void engineThatStartsAfterHoursIsReadAgainThoughTheAdapterMayHaveSlept() {
    ReaderLog log = new ReaderLog(Optional.empty());
    log.untilSeconds = ON + LATEST;
    log.run(
        new Bench("demo:long-drive", settings()), ReaderLog.settings(ReaderSettings.Pace.POLITE));

    assertThat(log.readingsBetween(0, OFF)).isNotEmpty();
    assertThat(log.readingsBetween(OFF + 30, ON)).isEmpty();
    assertThat(log.readingsBetween(ON, ON + LATEST)).isNotEmpty();
  }

  private static BenchSettings settings() {
    LongDrive drive = new LongDrive(Duration.ofHours(3), 1, BusProtocol.CAN_11_500, false);
    return new BenchSettings(
        drive.scenario(),
        OptionalDouble.empty(),
        1,
        0,
        VehicleTraits.USUAL,
        new AdapterTraits(Set.of(AdapterTrait.SLEEPY), AdapterTraits.USUAL.baud()),
        new FaultPlan(List.of(new Fault(Fault.Kind.ENGINE_OFF, OFF, ON))));
  }
}
