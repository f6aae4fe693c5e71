package steadypull.adapter;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.polling.Pacing;

/**
 * Asks a port for an adapter and the adapter for a vehicle, once. Works on the calling thread: some
 * seconds for a port on which nothing answers, half a minute behind which the vehicle is off.
 */
public final class AdapterProbe {
  private static final Pattern VOLTS = Pattern.compile("([0-9]{1,2}(\\.[0-9]+)?) ?V?");
  private static final Duration PATIENCE = Duration.ofSeconds(1);
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
            new ProbeResult.Adapter(ready.identity(), supplyVolts(port), vehicle(port));
      };
    } catch (LinkException e) {
      return new ProbeResult.CouldNotOpen(String.valueOf(e.getMessage()));
    }
  }

  private static OptionalDouble supplyVolts(AdapterPort port) throws LinkException {
    if (port.ask(WorkingMode.SUPPLY_VOLTAGE, PATIENCE) instanceof Reply.Text(String text)) {
      Matcher volts = VOLTS.matcher(text);
      return volts.matches()
          ? OptionalDouble.of(Double.parseDouble(volts.group(1)))
          : OptionalDouble.empty();
    }
    return OptionalDouble.empty();
  }

  private static Optional<ProbeResult.Vehicle> vehicle(AdapterPort port) throws LinkException {
    return switch (new VehicleSearch(port).search("")) {
      case VehicleSearch.Outcome.Failed failed -> Optional.empty();
      case VehicleSearch.Outcome.Found(VehicleKnowledge found) ->
          Optional.of(
              new ProbeResult.Vehicle(
                  found.protocol(), List.copyOf(found.units().keySet()), found.vin()));
    };
  }
}
