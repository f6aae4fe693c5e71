package steadypull.adapter;

import java.time.Duration;
import java.util.List;
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
    return result instanceof ProbeResult.Adapter;
  }

  private static ProbeResult probeOnce(LinkSource source) {
    try (AdapterPort port =
        AdapterPort.open(source, () -> !Thread.currentThread().isInterrupted(), GAP)) {
      return switch (new AdapterStart(port).fromScratch()) {
        case AdapterStart.Outcome.Mute mute -> new ProbeResult.NothingAnswered();
        case AdapterStart.Outcome.NotAnAdapter other -> new ProbeResult.NotAnAdapter(other.heard());
        case AdapterStart.Outcome.Ready ready -> adapter(ready);
      };
    } catch (LinkException e) {
      return new ProbeResult.CouldNotOpen(String.valueOf(e.getMessage()));
    }
  }

  private static ProbeResult adapter(AdapterStart.Outcome.Ready ready) throws LinkException {
    VehiclePort behind = ready.vehicle();
    return new ProbeResult.Adapter(
        ready.identity(), ready.showsSenders(), behind.supplyVolts(), behind(behind));
  }

  private static ProbeResult.Behind behind(VehiclePort port) throws LinkException {
    return switch (new VehicleSearch(port).search("")) {
      case VehicleSearch.Outcome.Found(VehicleKnowledge found) -> vehicle(found);
      case VehicleSearch.Outcome.Failed(Trouble.VehicleQuiet quiet) ->
          new ProbeResult.Silent(quiet.cause(), quiet.found());
      case VehicleSearch.Outcome.Failed(Trouble.AdapterConfused confused) ->
          new ProbeResult.Unclear(confused.heard());
      case VehicleSearch.Outcome.Failed(Trouble.AdapterRestarted restarted) ->
          new ProbeResult.Unclear(restarted.text());
      case VehicleSearch.Outcome.Failed failed -> new ProbeResult.Unclear("nothing");
    };
  }

  private static ProbeResult.Vehicle vehicle(VehicleKnowledge found) {
    int parameters =
        (int)
            found.units().values().stream()
                .flatMapToInt(unit -> unit.support().parameters())
                .distinct()
                .count();
    return new ProbeResult.Vehicle(
        found.protocol(), List.copyOf(found.units().keySet()), parameters, found.vin());
  }
}
