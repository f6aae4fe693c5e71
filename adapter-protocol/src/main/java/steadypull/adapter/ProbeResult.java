package steadypull.adapter;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What was found on a port, walking the connection upwards. A closed set. */
public sealed interface ProbeResult {

  /**
   * The port could not be opened or was lost.
   *
   * @param reason one clear message
   */
  record CouldNotOpen(String reason) implements ProbeResult {}

  /** The port is open and nothing answers on it. */
  record NothingAnswered() implements ProbeResult {}

  /**
   * Something answers, but not as an adapter does.
   *
   * @param heard what came, shortened
   */
  record NotAnAdapter(String heard) implements ProbeResult {}

  /**
   * An adapter answers that cannot do what is needed.
   *
   * @param identity its own text
   * @param command what it does not know
   */
  record UnfitAdapter(String identity, String command) implements ProbeResult {}

  /**
   * An adapter answers.
   *
   * @param identity its own text
   * @param supplyVolts voltage at the vehicle's diagnostic plug, or empty if it does not tell
   * @param vehicle what answers behind it, or empty if nothing does: ignition off, plug loose
   */
  record Adapter(String identity, OptionalDouble supplyVolts, Optional<Vehicle> vehicle)
      implements ProbeResult {}

  /**
   * A vehicle behind an adapter.
   *
   * @param protocol the adapter's words for the protocol; empty text if it does not tell
   * @param controlUnits addresses that answered, upper-case hex, rising
   * @param vin vehicle identification number, or empty text
   */
  record Vehicle(String protocol, List<String> controlUnits, String vin) {
    public Vehicle {
      controlUnits = List.copyOf(controlUnits);
    }
  }
}
