package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.adapter.ReaderSettings;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleSurvey;
import steadypull.vehicle.role.SensorEvidence;

/** Sensors in question are asked for and watched, and nothing else of a drive changes. */
@Execution(ExecutionMode.CONCURRENT)
class SensorsWatchedTest {
  @TempDir private Path folder;

  @Test
  void aDriveLeavesEvidenceThatTheNextOneAddsTo() throws Exception {
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:long-hot-grade?speed=max&start=500", 100, new Heard());
      SensorEvidence first = demo.library().sensorEvidence("Wattle 2");
      demo.drive("demo:long-hot-grade?speed=max&start=560", 300, new Heard());
      SensorEvidence second = demo.library().sensorEvidence("Wattle 2");

      assertThat(first.sensors()).containsKeys("01.0F", "01.67.2", "01.75.2", "01.77.1", "01.78.1");
      assertThat(second).isNotEqualTo(first);
      assertThat(RoleSurvey.of(second, CoolingLayout.WATER_TO_AIR).proposals())
          .extracting(RoleFinding.Proposed::channel)
          .contains(Channels.CHARGE_AIR_TEMP_IN, Channels.EXHAUST_TEMP_BEFORE_TURBINE);
    }
  }

  /** Roles that nobody has confirmed are never applied: the exhaust stays of unknown role. */
  @Test
  void aDriveAppliesNoPlaceThatNobodyHasConfirmed() throws Exception {
    Heard heard = new Heard();
    Vehicle stranger = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.library().save(stranger);
      demo.drive("demo:long-hot-grade?speed=max&start=500", 200, new Heard());
      demo.drive("demo:long-hot-grade?speed=max&start=500", 10, heard);

      assertThat(demo.library().vehicle("Wattle 2").map(Vehicle::sources)).contains(List.of());
    }

    assertThat(heard.samples())
        .extracting(Sample::channel)
        .contains(Channels.EXHAUST_GAS_TEMP)
        .doesNotContain(Channels.EXHAUST_TEMP_BEFORE_TURBINE);
  }

  @Test
  void sensorsThatFeedNoChannelAreAskedForSeldom() throws Exception {
    ReaderSettings usual = settings(Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR));
    ReaderSettings confirmed =
        settings(
            Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR)
                .withSource(new SignalSource("exhaust_temp_before_turbine", "01.79.1")));

    assertThat(usual.wanted()).containsAll(usual.seldom());
    assertThat(usual.seldom()).contains("01.79.1", "01.76.2", "01.67.2").doesNotContain("01.77.1");
    assertThat(confirmed.seldom()).doesNotContain("01.79.1");
  }

  private static ReaderSettings settings(Vehicle vehicle) throws Exception {
    return new DriveRoute(
            DemoWorld.links().find("demo:cool-day").orElseThrow(),
            DemoDrives.ENGLISH.setup(vehicle, true),
            ReaderSettings.Pace.POLITE,
            DriveEnd.never(),
            Optional.<Duration>empty(),
            Optional.empty(),
            Optional.empty())
        .readerSettings();
  }
}
