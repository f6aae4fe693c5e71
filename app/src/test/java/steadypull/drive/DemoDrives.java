package steadypull.drive;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.demo.DemoWorld;
import steadypull.store.TripLibrary;

/** Simulated drives over the bench adapter's bytes, as fast as they go. */
final class DemoDrives implements AutoCloseable {
  static final Instant START = Instant.parse("2026-07-15T17:45:12Z");
  static final DriveWords ENGLISH =
      new DriveWords(RuleSet.shipped(), Locale.ENGLISH, UnitSystem.METRIC);

  private final TripLibrary library;
  private final LiveDrives drives;

  DemoDrives(Path folder) throws Exception {
    library = TripLibrary.open(folder);
    LinkOffer offer =
        new LinkOffer(
            DemoWorld.links(),
            List.of(),
            address ->
                DemoWorld.scenario(address.replaceFirst("^demo:", "").replaceFirst("\\?.*", ""))
                    .map(DemoWorld::vehicleFile),
            DemoDrives::lasts,
            DemoWorld.receivers());
    drives = new LiveDrives(library, List.of(offer), ENGLISH, InstantSource.fixed(START), "test");
  }

  private static Optional<Duration> lasts(String address) {
    try {
      return DemoWorld.lasts(address);
    } catch (java.io.IOException malformed) {
      return Optional.empty();
    }
  }

  TripLibrary library() {
    return library;
  }

  LiveDrives desk() {
    return drives;
  }

  /** Drives a demo address to its end. */
  DriveOutcome drive(String address, PipelineOutput observer) throws Exception {
    return drives.begin(request(address, DriveEnd.withScenario()), observer).outcome().join();
  }

  /** Drives a demo address for so many seconds of the trip. */
  DriveOutcome drive(String address, int seconds, PipelineOutput observer) throws Exception {
    DriveEnd end = new DriveEnd(Optional.of(Duration.ofSeconds(seconds)), true);
    return drives.begin(request(address, end), observer).outcome().join();
  }

  static DriveRequest request(String address, DriveEnd end) {
    return new DriveRequest(address, "Wattle 2", "", Pace.POLITE, end);
  }

  @Override
  public void close() {
    library.close();
  }
}
