package steadypull.cli;

import steadypull.drive.LinkSummary;

/** Where the link stands, as a line for a terminal. */
final class LinkWords {
  private LinkWords() {}

  static String of(LinkSummary link) {
    return switch (link.state()) {
      case OPENING -> "opening " + link.detail();
      case SEARCHING -> "adapter found, looking for the vehicle: " + link.detail();
      case CONNECTED -> "connected: " + link.detail();
      case VEHICLE_SILENT ->
          "the adapter answers, but no vehicle does; is the ignition on? " + link.detail();
      case BUS_FAULT ->
          "the adapter answers, but the vehicle's bus does not carry; switch the ignition on and"
              + " seat the plug firmly: "
              + link.detail();
      case BUS_BUSY ->
          "the adapter answers, but finds no gap on the vehicle's bus; seat the plug firmly, and"
              + " have the plug's wiring checked if it stays so: "
              + link.detail();
      case ADAPTER_FAULT ->
          "the adapter reports a fault of its own, also after a reset; unplug it and plug it in"
              + " again, or use another one: "
              + link.detail();
      case ENGINE_OFF ->
          "the engine is off; the vehicle is left alone until it is started: " + link.detail();
      case LOST -> "link lost: " + link.detail();
      case CLOSED -> "link closed";
    };
  }
}
