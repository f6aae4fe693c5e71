package steadypull.cli;

import steadypull.drive.ReceiverNews;

/** Where the satellite receiver stands, as a line for a terminal. */
final class ReceiverWords {
  private ReceiverWords() {}

  static String of(ReceiverNews news) {
    return switch (news.state()) {
      case ABSENT -> "no position: " + news.detail();
      case SEARCHING -> "no position: the satellite receiver does not know yet where it is";
      case LOCATED -> "position known";
      case CLOSED -> "satellite receiver closed";
    };
  }
}
