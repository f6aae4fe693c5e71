package steadypull.adapter;

import java.util.List;
import java.util.Objects;

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

  /** The adapter answers, the vehicle does not: ignition or engine off. */
  record VehicleSilent(String adapter) implements LinkState {}

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
