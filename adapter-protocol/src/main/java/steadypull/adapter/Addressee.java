package steadypull.adapter;

import java.util.HashSet;
import java.util.Set;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.link.LinkException;

/**
 * Whom the requests through an adapter go to: everybody, as after its start, or one control unit.
 * The adapter is told only what it was not told last. Reader thread only.
 */
final class Addressee {
  private final AdapterPort port;
  private final Set<String> refusedHeaders = new HashSet<>();

  /** Header that was set last; empty while requests go to everybody. */
  private String present = "";

  /** Header of the one control unit that is asked instead of everybody; empty if all are. */
  private String onlyUnit = "";

  Addressee(AdapterPort port) {
    this.port = port;
  }

  /** From now on this control unit is asked instead of everybody. */
  void narrowTo(String header) {
    onlyUnit = header;
  }

  /** From now on everybody is everybody again. */
  void widen() {
    onlyUnit = "";
  }

  /** Addresses everybody whom there is to ask; anything but an acceptance means it was not done. */
  Reply everybody(MessageFormat format) throws LinkException {
    if (!onlyUnit.isEmpty()) {
      return unit(onlyUnit);
    }
    if (present.isEmpty()) {
      return new Reply.Accepted();
    }
    // ISO 15765-4: functional request identifiers.
    Reply reply = set(format == MessageFormat.CAN_29_BIT ? "18DB33F1" : "7DF");
    if (reply instanceof Reply.Accepted) {
      present = "";
    }
    return reply;
  }

  /** Addresses one control unit; anything but an acceptance means it was not done. */
  Reply unit(String header) throws LinkException {
    if (present.equals(header)) {
      return new Reply.Accepted();
    }
    Reply reply = set(header);
    if (reply instanceof Reply.Accepted) {
      present = header;
    } else if (reply instanceof Reply.NotUnderstood) {
      refusedHeaders.add(header);
    }
    return reply;
  }

  private Reply set(String header) throws LinkException {
    return port.ask(WorkingMode.header(header), AdapterVehicle.SETTING_PATIENCE);
  }

  /** Whether the adapter did not understand this header. */
  boolean isRefused(String header) {
    return refusedHeaders.contains(header);
  }
}
