package steadypull.drive;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.capture.Capture;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ListeningSource;
import steadypull.road.RoadSight;
import steadypull.vehicle.VehicleSignal;

/**
 * From which link a drive comes and what is asked for. Immutable.
 *
 * @param source where the adapter is
 * @param setup vehicle, rules and words
 * @param pace how hard to ask
 * @param end when it ends by itself
 * @param lasts how long the source has something to tell, on its clock, if it ends
 * @param receiver where the satellite receiver is, if there is one
 * @param roads looks ahead for each trip anew
 * @param capture into which the source's dialogue goes, if it is kept
 */
record DriveRoute(
    LinkSource source,
    DriveSetup setup,
    ReaderSettings.Pace pace,
    DriveEnd end,
    Optional<Duration> lasts,
    Optional<ListeningSource> receiver,
    Supplier<RoadSight> roads,
    Optional<Capture> capture) {

  /** A drive that knows no roads. */
  DriveRoute(
      LinkSource source,
      DriveSetup setup,
      ReaderSettings.Pace pace,
      DriveEnd end,
      Optional<Duration> lasts,
      Optional<ListeningSource> receiver,
      Optional<Capture> capture) {
    this(source, setup, pace, end, lasts, receiver, UnknownRoad::new, capture);
  }

  /** Nanoseconds from the opening of the source to its end; "never" is the greatest number. */
  long lastsNanos() {
    return end.isWithScenario()
        ? lasts.map(Duration::toNanos).orElse(Long.MAX_VALUE)
        : Long.MAX_VALUE;
  }

  SensorRoles roles() {
    return new SensorRoles(setup.vehicle());
  }

  ReaderSettings readerSettings() {
    List<DefinedSignal> defined =
        setup.vehicle().signals().stream().map(DriveRoute::defined).toList();
    SensorRoles roles = roles();
    return new ReaderSettings(
        Set.copyOf(roles.standardSignals()), Set.copyOf(roles.onlyInQuestion()), defined, pace);
  }

  private static DefinedSignal defined(VehicleSignal signal) {
    return new DefinedSignal(
        signal.identifier(),
        signal.header(),
        signal.channelId(),
        signal.firstBit(),
        signal.bitLength(),
        signal.signed(),
        signal.scale(),
        signal.offset(),
        signal.unit(),
        signal.lowest(),
        signal.highest());
  }
}
