package steadypull.adapter.dialogue;

import java.util.List;

/**
 * The settings in which the reader works with an adapter: no echo, no line feeds, no blanks,
 * headers on, the adapter builds the length bytes, adaptive timing, nothing stored for good.
 * Immutable.
 */
public final class WorkingMode {

  /**
   * One setting.
   *
   * @param command the adapter command
   * @param isNeeded whether the reader cannot work without it; the others are conveniences that
   *     some adapters do not know
   */
  public record Setting(String command, boolean isNeeded) {}

  /** The settings in the order in which they are made. */
  public static final List<Setting> SETTINGS =
      List.of(
          new Setting("ATE0", true),
          new Setting("ATL0", false),
          new Setting("ATS0", false),
          new Setting("ATH1", true),
          new Setting("ATCAF1", false),
          new Setting("ATAT1", false),
          new Setting("ATM0", false));

  /** Asks for the identity text; also the first thing said to an unknown adapter. */
  public static final String IDENTIFY = "ATI";

  public static final String FULL_RESET = "ATZ";
  public static final String WARM_START = "ATWS";
  public static final String CLOSE_PROTOCOL = "ATPC";
  public static final String PROTOCOL_NUMBER = "ATDPN";
  public static final String PROTOCOL_TEXT = "ATDP";
  public static final String SUPPLY_VOLTAGE = "ATRV";

  private WorkingMode() {}

  /**
   * Lets the adapter search for the vehicle's protocol.
   *
   * @param first number of the protocol to try first, one hex digit 1 to 9, or empty text for the
   *     adapter's own order
   */
  public static String search(String first) {
    return first.isEmpty() ? "ATTP0" : "ATTPA" + first;
  }

  /** Sets the header of the requests that follow: three hex digits, or eight of a 29-bit one. */
  public static String header(String header) {
    return "ATSH" + (header.length() == 8 ? header.substring(2) : header);
  }
}
