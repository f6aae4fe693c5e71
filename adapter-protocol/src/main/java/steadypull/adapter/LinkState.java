package steadypull.adapter;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/** Where the link stands. A closed set: handle it with a switch without default. */
public sealed interface LinkState {

  /** The port is being opened. */
  record Opening(String address) implements LinkState {}

  /** The adapter answers and is looking for the vehicle. */
  record Searching(String adapter) implements LinkState {}

  /**
   * The vehicle answers.
   *
   * @param adapter identity text of the adapter
   * @param protocol the adapter's description of the protocol
   * @param vin vehicle identification number, or empty text when the vehicle does not tell it
   * @param signals what this vehicle offers and the reader will ask for
   */
  record Connected(String adapter, String protocol, String vin, List<String> signals)
      implements LinkState {
    public Connected {
      signals = List.copyOf(signals);
    }
  }

  /**
   * The adapter answers, the vehicle does not; it is asked again every few seconds.
   *
   * @param adapter identity text of the adapter
   * @param cause what stands between
   */
  record VehicleSilent(String adapter, SilenceCause cause) implements LinkState {
    public VehicleSilent {
      Objects.requireNonNull(cause);
    }
  }

  /**
   * The engine is off. The vehicle's bus is left alone until the supply tells that the engine runs.
   *
   * @param adapter identity text of the adapter
   * @param supplyVolts voltage at the vehicle's diagnostic plug, or empty if the adapter does not
   *     tell it
   */
  record Resting(String adapter, OptionalDouble supplyVolts) implements LinkState {}

  /**
   * The link failed; the reader goes on by itself.
   *
   * @param reason one clear message: what was tried, expected, found, what to do
   * @param retrySeconds seconds until the next try
   */
  record Lost(String reason, int retrySeconds) implements LinkState {
    public Lost {
      Objects.requireNonNull(reason);
    }
  }

  /** The reader was closed; nothing more comes. */
  record Closed() implements LinkState {}
}
