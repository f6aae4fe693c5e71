package steadypull.adapter;

import steadypull.adapter.dialogue.Reply;

/** Says in words what a reply was, for messages to people. */
final class ReplyWords {
  private ReplyWords() {}

  static String of(Reply reply) {
    return switch (reply) {
      case Reply.Data data -> quoted(String.join(" ", data.lines()));
      case Reply.Accepted accepted -> quoted("OK");
      case Reply.Text text -> quoted(text.text());
      case Reply.NoData none -> quoted("NO DATA");
      case Reply.NotUnderstood unknown -> quoted("?");
      case Reply.NotConnected none -> quoted("UNABLE TO CONNECT");
      case Reply.BusFault fault -> quoted(fault.text());
      case Reply.Overflowed full -> quoted("BUFFER FULL");
      case Reply.Damaged damaged -> quoted("DATA ERROR");
      case Reply.Stopped stopped -> quoted("STOPPED");
      case Reply.Restarted restarted -> quoted(restarted.text());
      case Reply.Unexpected unexpected -> quoted(unexpected.text());
      case Reply.Silence silence ->
          silence.heard().isEmpty() ? "nothing" : quoted(silence.heard()) + " without a prompt";
    };
  }

  private static String quoted(String text) {
    return "\"" + text + "\"";
  }
}
