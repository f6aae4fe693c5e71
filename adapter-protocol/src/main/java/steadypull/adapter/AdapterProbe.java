package steadypull.adapter;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.polling.Pacing;

/**
 * Asks a port for an adapter and the adapter for a vehicle, once. Works on the calling thread: some
 * seconds for a port on which nothing answers, half a minute behind which the vehicle is off.
 */
public final class AdapterProbe {
  private static final Duration GAP = Pacing.polite(1).leastGap();

  private AdapterProbe() {}

  /** Walks the connection upwards as far as it goes; stops early if the thread is interrupted. */
  public static ProbeResult probe(LinkSource source) {
    ProbeResult result = new ProbeResult.NothingAnswered();
    int ways = source.waysToOpen();
    for (int way = 0; way < ways && !isAdapter(result); way++) {
      ProbeResult next = probeOnce(source);
      result = next instanceof ProbeResult.NothingAnswered ? result : next;
    }
    return result;
  }

  private static boolean isAdapter(ProbeResult result) {
    return result instanceof ProbeResult.Adapter || result instanceof ProbeResult.UnfitAdapter;
  }

  private static ProbeResult probeOnce(LinkSource source) {
    try (AdapterPort port =
        AdapterPort.open(source, () -> !Thread.currentThread().isInterrupted(), GAP)) {
      return switch (new AdapterStart(port).fromScratch()) {
        case AdapterStart.Outcome.Mute mute -> new ProbeResult.NothingAnswered();
        case AdapterStart.Outcome.Unfit unfit ->
            new ProbeResult.UnfitAdapter(unfit.identity(), unfit.command());
        case AdapterStart.Outcome.NotAnAdapter other -> new ProbeResult.NotAnAdapter(other.heard());
        case AdapterStart.Outcome.Ready ready ->
            adapter(ready.identity(), new AdapterVehicle(port));
      };
    } catch (LinkException e) {
      return new ProbeResult.CouldNotOpen(String.valueOf(e.getMessage()));
    }
  }

  private static ProbeResult adapter(String identity, VehiclePort port) throws LinkException {
    return new ProbeResult.Adapter(identity, port.supplyVolts(), vehicle(port));
  }

  private static Optional<ProbeResult.Vehicle> vehicle(VehiclePort port) throws LinkException {
    return switch (new VehicleSearch(port).search("")) {
      case VehicleSearch.Outcome.Failed failed -> Optional.empty();
      case VehicleSearch.Outcome.Found(VehicleKnowledge found) ->
          Optional.of(
              new ProbeResult.Vehicle(
                  found.protocol(), List.copyOf(found.units().keySet()), found.vin()));
    };
  }
}
