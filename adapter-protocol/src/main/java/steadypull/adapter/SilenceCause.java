package steadypull.adapter;

import java.util.Locale;
import steadypull.adapter.dialogue.Reply;

/** What stands between an adapter that answers and a vehicle that does not. */
public enum SilenceCause {
  /** Nobody answers on the vehicle's bus: ignition off, or the plug is loose. */
  NO_ANSWER,
  /** The bus does not carry what is sent: it sleeps, or a contact or the bit rate is wrong. */
  BUS_FAULT,
  /** The bus never falls quiet, which mostly is its wiring. */
  BUS_BUSY,
  /** What the adapter puts out does not read back, also after a reset: it is broken. */
  ADAPTER_FAULT;

  /** Reads a reply that brought nothing from the vehicle. */
  static SilenceCause of(Reply reply) {
    return reply instanceof Reply.BusFault(String text) ? ofFault(text) : NO_ANSWER;
  }

  private static SilenceCause ofFault(String text) {
    String bare = text.replaceAll("\\s", "").toUpperCase(Locale.ROOT);
    if (bare.contains("FBERROR")) {
      return ADAPTER_FAULT;
    }
    if (bare.contains("BUSBUSY")) {
      return BUS_BUSY;
    }
    // "BUS INIT: ...ERROR" and a bare "ERROR": an older bus on which nobody took up the session.
    return bare.contains("CANERROR") || bare.contains("BUSERROR") ? BUS_FAULT : NO_ANSWER;
  }
}
