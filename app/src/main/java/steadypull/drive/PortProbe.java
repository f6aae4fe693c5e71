package steadypull.drive;

import java.util.Locale;
import steadypull.adapter.AdapterProbe;
import steadypull.adapter.ProbeResult;
import steadypull.adapter.link.LinkSource;

/** Asks a port for an adapter and puts the finding into words, from the plug upwards. */
final class PortProbe {
  private PortProbe() {}

  /** Takes seconds on a port that does not answer. */
  static PortFinding probe(LinkSource source) {
    return switch (AdapterProbe.probe(source)) {
      case ProbeResult.CouldNotOpen failed ->
          new PortFinding(false, false, FaultText.printable(failed.reason()));
      case ProbeResult.NothingAnswered none ->
          new PortFinding(
              false,
              false,
              "opened, but nothing answers. Is the adapter plugged in and lit? Wireless adapters"
                  + " must be paired and in reach.");
      case ProbeResult.UnfitAdapter unfit ->
          new PortFinding(
              true,
              false,
              "adapter \"%s\" does not know %s and cannot show which control unit answers. Use another adapter."
                  .formatted(unfit.identity(), unfit.command()));
      case ProbeResult.NotAnAdapter other ->
          new PortFinding(
              false,
              false,
              "something answers, but not as an AT-command adapter does. It said \"%s\". Choose another port."
                  .formatted(FaultText.printable(other.heard())));
      case ProbeResult.Adapter adapter -> of(adapter);
    };
  }

  private static PortFinding of(ProbeResult.Adapter adapter) {
    String supply =
        adapter.supplyVolts().isPresent()
            ? String.format(
                Locale.ROOT, ", %.1f V at the plug", adapter.supplyVolts().getAsDouble())
            : "";
    String seen = "adapter \"" + FaultText.printable(adapter.identity()) + "\"" + supply;
    return adapter
        .vehicle()
        .map(
            vehicle ->
                new PortFinding(
                    true,
                    true,
                    "%s, vehicle answers over %s, control units %s"
                        .formatted(
                            seen, vehicle.protocol(), String.join(", ", vehicle.controlUnits()))))
        .orElseGet(
            () ->
                new PortFinding(
                    true,
                    false,
                    seen
                        + ", but no vehicle answers. Switch the ignition on, seat the plug firmly,"
                        + " and try again."));
  }
}
