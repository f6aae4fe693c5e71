package steadypull.adapter;

import java.time.Duration;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.link.LinkException;

/**
 * Whom the next request is addressed to. The header is changed only when another one is needed; the
 * rest of the time requests go to everybody. Reader thread only.
 */
final class RequestHeader {
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  private final AdapterPort port;
  private final String everybody;
  private String present;

  RequestHeader(AdapterPort port, MessageFormat format) {
    this.port = port;
    // ISO 15765-4: functional request identifiers.
    this.everybody = format == MessageFormat.CAN_29_BIT ? "18DB33F1" : "7DF";
    this.present = everybody;
  }

  /** Addresses everybody. */
  Reply toEverybody() throws LinkException {
    return to(everybody);
  }

  /** Addresses one control unit; accepted, or what the adapter said instead. */
  Reply to(String header) throws LinkException {
    if (present.equals(header)) {
      return new Reply.Accepted();
    }
    Reply reply = port.ask(WorkingMode.header(header), PATIENCE);
    if (reply instanceof Reply.Accepted) {
      present = header;
    }
    return reply;
  }
}
