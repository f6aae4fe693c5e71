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
      case LOST -> "link lost: " + link.detail();
      case CLOSED -> "link closed";
    };
  }
}
