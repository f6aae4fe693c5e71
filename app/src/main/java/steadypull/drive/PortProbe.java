package steadypull.drive;

import java.util.Locale;
import java.util.OptionalDouble;
import steadypull.adapter.AdapterProbe;
import steadypull.adapter.ProbeResult;
import steadypull.adapter.SilenceCause;
import steadypull.adapter.link.LinkSource;

/** Asks a port for an adapter and puts the finding into words, from the plug upwards. */
final class PortProbe {
  /** A 12 V battery below it hardly cranks an engine (common practice, no source). */
  private static final double LOW_SUPPLY_VOLTS = 11.5;

  /** Characters of an identification number that are shown: the serial end tells little. */
  private static final int SHOWN_OF_NUMBER = 4;

  private final boolean showsNumber;
  private final ConnectionWalk walk = new ConnectionWalk();

  private PortProbe(boolean showsNumber) {
    this.showsNumber = showsNumber;
  }

  /**
   * Takes seconds on a port that does not answer.
   *
   * @param showsNumber whether the vehicle's identification number is told in full
   */
  static PortFinding probe(LinkSource source, boolean showsNumber) {
    return new PortProbe(showsNumber).finding(AdapterProbe.probe(source));
  }

  private PortFinding finding(ProbeResult result) {
    return switch (result) {
      case ProbeResult.CouldNotOpen failed ->
          noAdapter(walk.fails(ConnectionStep.PORT, failed.reason()));
      case ProbeResult.NothingAnswered none ->
          noAdapter(opened().fails(ConnectionStep.ANSWER, "nothing came back"));
      case ProbeResult.NotAnAdapter other ->
          noAdapter(
              opened()
                  .holds(ConnectionStep.ANSWER, "")
                  .fails(ConnectionStep.ADAPTER, "it said \"" + other.heard() + "\""));
      case ProbeResult.Adapter adapter -> adapter(adapter);
    };
  }

  private ConnectionWalk opened() {
    return walk.holds(ConnectionStep.PORT, "");
  }

  private static PortFinding noAdapter(ConnectionWalk walk) {
    return new PortFinding(false, false, walk.lines());
  }

  private PortFinding adapter(ProbeResult.Adapter adapter) {
    opened()
        .holds(ConnectionStep.ANSWER, "")
        .holds(ConnectionStep.ADAPTER, "\"" + adapter.identity() + "\"");
    if (adapter.showsSenders()) {
      walk.holds(ConnectionStep.SENDERS, "");
    } else {
      walk.fails(ConnectionStep.SENDERS, "");
    }
    supply(adapter.supplyVolts());
    return new PortFinding(true, isVehicle(adapter.behind()), walk.lines());
  }

  private void supply(OptionalDouble volts) {
    if (volts.isEmpty()) {
      walk.isUnknown(ConnectionStep.SUPPLY, "the adapter does not tell the voltage");
      return;
    }
    String told = String.format(Locale.ROOT, "%.1f V", volts.getAsDouble());
    if (volts.getAsDouble() < LOW_SUPPLY_VOLTS) {
      walk.fails(ConnectionStep.SUPPLY, told);
    } else {
      walk.holds(ConnectionStep.SUPPLY, told);
    }
  }

  private boolean isVehicle(ProbeResult.Behind behind) {
    return switch (behind) {
      case ProbeResult.Vehicle vehicle -> isVehicle(vehicle);
      case ProbeResult.Silent silent -> {
        walk.fails(ConnectionStep.BUS, words(silent.cause()) + " (" + silent.heard() + ")");
        yield false;
      }
      case ProbeResult.Unclear unclear -> {
        walk.fails(ConnectionStep.BUS, "what came makes no sense (" + unclear.heard() + ")");
        yield false;
      }
    };
  }

  private boolean isVehicle(ProbeResult.Vehicle vehicle) {
    walk.holds(ConnectionStep.BUS, vehicle.protocol());
    String units = "control units " + String.join(", ", vehicle.controlUnits());
    if (vehicle.parameters() == 0) {
      walk.fails(ConnectionStep.UNITS, units);
      return false;
    }
    walk.holds(ConnectionStep.UNITS, units + ", " + vehicle.parameters() + " parameters");
    if (vehicle.vin().isEmpty()) {
      walk.isUnknown(ConnectionStep.IDENTITY, ConnectionStep.IDENTITY.remedy());
    } else {
      walk.holds(ConnectionStep.IDENTITY, showsNumber ? vehicle.vin() : masked(vehicle.vin()));
    }
    return true;
  }

  private static String masked(String number) {
    int hidden = Math.max(0, number.length() - SHOWN_OF_NUMBER);
    return "*".repeat(hidden) + number.substring(hidden);
  }

  private static String words(SilenceCause cause) {
    return switch (cause) {
      case NO_ANSWER -> "nobody answers";
      case BUS_FAULT -> "the bus does not carry what is sent";
      case BUS_BUSY -> "there is no gap on the bus; mostly that is its wiring";
      case ADAPTER_FAULT -> "the adapter reports a fault of its own; try another one";
    };
  }
}
