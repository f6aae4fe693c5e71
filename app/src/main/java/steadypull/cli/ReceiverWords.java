package steadypull.cli;

import steadypull.drive.ReceiverNews;

/** Where the satellite receiver stands, as a line for a terminal. */
final class ReceiverWords {
  private ReceiverWords() {}

  static String of(ReceiverNews news) {
    return switch (news.state()) {
      case ABSENT -> "no position: " + news.detail();
      case SEARCHING -> "no position: the satellite receiver does not know yet where it is";
      case OUT_OF_PACE ->
          "no position: the satellite receiver's clock and the link's do not keep pace, so nobody"
              + " knows to which moments its positions belong; a simulated drive may be too quick"
              + " for this machine";
      case LOCATED -> "position known";
      case CLOSED -> "satellite receiver closed";
    };
  }
}
