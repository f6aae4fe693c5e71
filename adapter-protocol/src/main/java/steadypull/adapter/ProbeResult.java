package steadypull.adapter;

import java.util.List;
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
   * An adapter answers.
   *
   * @param identity its own text
   * @param showsSenders whether it shows which control unit answers
   * @param supplyVolts voltage at the vehicle's diagnostic plug, or empty if it does not tell
   * @param behind what was found behind it
   */
  record Adapter(String identity, boolean showsSenders, OptionalDouble supplyVolts, Behind behind)
      implements ProbeResult {}

  /** What is behind an adapter. A closed set. */
  sealed interface Behind {}

  /**
   * A vehicle answers.
   *
   * @param protocol the adapter's words for the protocol; empty text if it does not tell
   * @param controlUnits addresses that answered, upper-case hex, rising
   * @param parameters how many standard parameters they offer together
   * @param vin vehicle identification number, or empty text
   */
  record Vehicle(String protocol, List<String> controlUnits, int parameters, String vin)
      implements Behind {
    public Vehicle {
      controlUnits = List.copyOf(controlUnits);
    }
  }

  /**
   * No vehicle answers.
   *
   * @param cause what stands between
   * @param heard the adapter's words
   */
  record Silent(SilenceCause cause, String heard) implements Behind {}

  /**
   * Something came that is no sound answer.
   *
   * @param heard what it was
   */
  record Unclear(String heard) implements Behind {}
}
