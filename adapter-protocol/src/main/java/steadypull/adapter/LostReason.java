package steadypull.adapter;

import steadypull.adapter.link.LinkException;

/** One clear message for each way in which an adapter can be lost. */
final class LostReason {
  private static final String TALK = "talk to the adapter on";

  private LostReason() {}

  static String mute(String address) {
    return message(
        address,
        "it was asked for its identity and nothing came back",
        "Check that the adapter is plugged in and has power, and that this is its port; for a"
            + " serial port also the baud rate, such as ?baud=38400.");
  }

  static String notAnAdapter(String address, String heard) {
    return message(
        address,
        "expected the answers of an AT-command adapter, found " + heard,
        "Check that this is the adapter's port and its baud rate.");
  }

  static String of(String address, Trouble trouble) {
    return switch (trouble) {
      case Trouble.AdapterMute mute ->
          message(
              address,
              "expected a prompt after a request, found silence",
              "Check the plug and the adapter's power; it is opened again by itself.");
      case Trouble.AdapterConfused confused ->
          message(
              address,
              "expected data in hex behind a header, found " + confused.heard(),
              "It is opened again by itself; if this repeats, unplug the adapter and plug it in"
                  + " again, or use another one: some cannot show headers.");
      case Trouble.AdapterRestarted restarted ->
          message(
              address,
              "it restarts again and again (\"" + restarted.text() + "\")",
              "Check the vehicle's battery and the seat of the plug.");
      case Trouble.EngineOff off -> message(address, "the engine is off", "Start the engine.");
      case Trouble.VehicleQuiet quiet ->
          message(address, "the vehicle does not answer", "Switch the ignition on.");
      case Trouble.Stopping stopping -> message(address, "the reader was closed", "Open it again.");
    };
  }

  private static String message(String address, String found, String remedy) {
    return String.valueOf(new LinkException(address, TALK, found, remedy, null).getMessage());
  }
}
