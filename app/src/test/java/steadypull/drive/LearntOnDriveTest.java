package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.demo.DemoWorld;
import steadypull.store.TripLibrary;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LearntQuantity;
import steadypull.vehicle.Vehicle;

/** A drive begins with what the drives before have taught, and its replay begins as it did. */
@Execution(ExecutionMode.CONCURRENT)
class LearntOnDriveTest {
  private static final String CONDUCTANCE = "charge_coolant.conductance_W_per_K";

  @TempDir Path folder;

  private final AtomicReference<Instant> now =
      new AtomicReference<>(Instant.parse("2026-07-15T08:00:00Z"));

  /** What was foretold of the charge coolant two minutes ahead, second by second. */
  private static final class Foretold implements PipelineOutput {
    private final List<String> medians = new ArrayList<>();

    @Override
    public void forecast(Forecast forecast) {
      for (ChannelForecast each : forecast.channels()) {
        if (each instanceof ChannelForecast.Ready ready) {
          medians.add(
              forecast.timeMicros() + each.channel().id() + ready.fan().at(Fan.MEDIAN, 120));
        }
      }
    }
  }

  private String drive(TripLibrary library, int seed, Foretold foretold) throws Exception {
    LinkOffer offer =
        new LinkOffer(
            DemoWorld.links(),
            List.of(),
            _ -> DemoWorld.scenario("long-hot-grade").map(DemoWorld::vehicleFile),
            _ -> Optional.of(Duration.ofMinutes(20)));
    LiveDrives drives =
        new LiveDrives(library, List.of(offer), DemoDrives.ENGLISH, now::get, "test");
    DriveEnd end = new DriveEnd(Optional.of(Duration.ofMinutes(8)), true);
    DriveRequest request =
        DemoDrives.request("demo:long-hot-grade?speed=max&start=300&seed=" + seed, end);
    String trip = drives.begin(request, foretold).outcome().join().tripId().orElseThrow();
    library.heat().awaitLearned();
    now.set(now.get().plus(Duration.ofDays(1)));
    return trip;
  }

  private static LearntQuantity conductance(Vehicle vehicle) {
    return vehicle.learnt().of(CONDUCTANCE).orElseThrow();
  }

  private static List<String> replayed(TripLibrary library, String trip, Vehicle vehicle)
      throws Exception {
    Foretold foretold = new Foretold();
    new Replay(DemoDrives.ENGLISH.setup(vehicle, true), foretold).run(library, library.find(trip));
    return foretold.medians;
  }

  @Test
  void aDriveSetsOutWithWhatWasLearntAndItsReplayForetellsTheSameForEver() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String first = drive(library, 1, new Foretold());
      assertThat(library.vehicleOf(first).learnt()).isEqualTo(LearntHeat.NOTHING);
      assertThat(conductance(library.vehicle("Wattle 2").orElseThrow()).trips()).isEqualTo(1);

      Foretold live = new Foretold();
      String second = drive(library, 2, live);

      Vehicle then = library.vehicleOf(second);
      assertThat(conductance(then).trips()).isEqualTo(1);
      assertThat(conductance(library.vehicle("Wattle 2").orElseThrow()).trips())
          .as("it has learnt since")
          .isEqualTo(2);
      assertThat(live.medians).hasSizeGreaterThan(1000);
      assertThat(replayed(library, second, then)).isEqualTo(live.medians);
      assertThat(replayed(library, second, then.withConfigurations(List.of())))
          .as("the same drive as a first one")
          .hasSameSizeAs(live.medians)
          .isNotEqualTo(live.medians);
    }
  }

  @Test
  void whatIsFittedGoesAlongWithEachTripAndBeginsAnew() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      drive(library, 1, new Foretold());
      library
          .heat()
          .fit(
              "Wattle 2",
              new Configuration(
                  "second charge cooler",
                  now.get().minusSeconds(60),
                  Set.of(Circuit.CHARGE_AIR),
                  LearntHeat.NOTHING));

      String second = drive(library, 2, new Foretold());

      assertThat(library.find(second).details().fitted()).isEqualTo("second charge cooler");
      assertThat(conductance(library.vehicleOf(second)).trips()).isZero();
      assertThat(
              library
                  .vehicleOf(second)
                  .learnt()
                  .of("engine_coolant.thermostat_opens_degC")
                  .orElseThrow()
                  .trips())
          .isEqualTo(1);
    }
  }
}
