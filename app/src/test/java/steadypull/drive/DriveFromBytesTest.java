package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceEvent;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;
import steadypull.store.TripSummary;

/** Whole drives over the bench adapter's bytes: reader, store, forecast and advice together. */
@Execution(ExecutionMode.CONCURRENT)
class DriveFromBytesTest {
  @TempDir private Path folder;

  /** The promise of the product: the driver hears of it before the engine takes power away. */
  @Test
  void onTheLongHotGradeTheDriverIsToldBeforeTheEngineReducesPower() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:long-hot-grade?speed=max", heard);
    }

    AdviceEvent derate = heard.first(AdviceEvent.Kind.DERATE_BEGAN).orElseThrow();
    AdviceEvent told = heard.firstToActOn().orElseThrow();
    assertThat(told.channel()).contains(Channels.CHARGE_AIR_TEMP_OUT);
    assertThat(told.secondsToLimit()).isPresent();
    assertThat(derate.timeMicros() - told.timeMicros())
        .as("lead of the first advisory over the derate, us")
        .isGreaterThan(75_000_000);
    assertThat(told.text()).as("15 km/h less hold it").startsWith("Let speed fall to 75.");
  }

  @Test
  void onTheSameRoadOnACoolDayNothingIsSaid() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max", heard);
    }

    assertThat(heard.seconds).hasSizeGreaterThan(900);
    assertThat(heard.firstToActOn()).isEmpty();
    assertThat(heard.first(AdviceEvent.Kind.DERATE_BEGAN)).isEmpty();
  }

  /** What is tested on recorded trips must be what drives. */
  @Test
  void aRecordedTripReplayedSaysTheSameAtTheSameTimesAsTheLiveDrive() throws Exception {
    Heard live = new Heard();
    Heard replayed = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      String trip =
          demo.drive("demo:long-hot-grade?speed=max&start=300", 400, live).tripId().orElseThrow();
      TripSummary summary = demo.library().find(trip);
      new Replay(DemoDrives.ENGLISH.setup(demo.library().vehicleOf(trip), true), replayed)
          .run(demo.library(), summary);
    }

    assertThat(live.advice).isNotEmpty();
    assertThat(replayed.adviceLines()).isEqualTo(live.adviceLines());
    assertThat(replayed.entries).isEqualTo(live.entries);
    assertThat(replayed.last().timeMicros()).isEqualTo(live.last().timeMicros());
  }

  @Test
  void whatIsKeptIsWhatWasHeardInTheSameOrder() throws Exception {
    Heard heard = new Heard();
    List<TripEntry> kept = new ArrayList<>();
    TripSummary summary;
    try (DemoDrives demo = new DemoDrives(folder)) {
      String trip = demo.drive("demo:cool-day?speed=max", 60, heard).tripId().orElseThrow();
      demo.library().replay(trip, kept::add);
      summary = demo.library().find(trip);
    }

    assertThat(kept).isEqualTo(heard.entries);
    assertThat(summary.sealed()).isTrue();
    assertThat(summary.start()).isAfterOrEqualTo(DemoDrives.START);
    assertThat(summary.durationSeconds()).isEqualTo(60);
    assertThat(summary.gaps()).isEmpty();
  }

  @Test
  void theTripBeginsWithTheFirstReading() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max", 10, heard);
    }

    Sample first = heard.samples().getFirst();
    assertThat(first.timeMicros()).isZero();
  }

  @Test
  void aSimulatedVehicleBringsEveryChannelOfADrive() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max", 30, heard);
    }

    assertThat(heard.samples())
        .extracting(Sample::channel)
        .contains(
            Channels.ENGINE_COOLANT_TEMP,
            Channels.CHARGE_COOLANT_TEMP,
            Channels.CHARGE_AIR_TEMP_IN,
            Channels.CHARGE_AIR_TEMP_OUT,
            Channels.AMBIENT_AIR_TEMP,
            Channels.ENGINE_OIL_TEMP,
            Channels.TRANSMISSION_FLUID_TEMP,
            Channels.AIR_MASS_FLOW,
            Channels.DEMANDED_TORQUE,
            Channels.DELIVERED_TORQUE,
            Channels.GEAR,
            Channels.WHEEL_POWER,
            Channels.ROAD_GRADE);
  }

  @Test
  void theSpeedOfASimulationChangesNothingOfWhatIsHeard() throws Exception {
    Heard fast = new Heard();
    Heard paced = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max", 20, fast);
      demo.drive("demo:cool-day?speed=100", 20, paced);
    }

    assertThat(paced.entries).isEqualTo(fast.entries);
  }
}
