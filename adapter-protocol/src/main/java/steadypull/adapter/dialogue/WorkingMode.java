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
   * @param need how much depends on it
   */
  public record Setting(String command, Need need) {}

  /** How much depends on a setting. */
  public enum Need {
    /** The adapter may say that it does not know the command: then it cannot work otherwise. */
    ANSWERED,
    /** The reader can do without, but worse: a refusal must come twice to be believed. */
    ANSWERED_TWICE,
    /** A convenience. */
    WANTED
  }

  /** Shows in every line who sent it. An adapter that refuses is read as far as that goes. */
  public static final String SHOW_SENDERS = "ATH1";

  /** The settings in the order in which they are made. */
  public static final List<Setting> SETTINGS =
      List.of(
          new Setting("ATE0", Need.ANSWERED),
          new Setting("ATL0", Need.WANTED),
          new Setting("ATS0", Need.WANTED),
          new Setting(SHOW_SENDERS, Need.ANSWERED_TWICE),
          // Off, it would turn the question 01 04 into a request to clear codes.
          new Setting("ATCAF1", Need.ANSWERED),
          new Setting("ATAT1", Need.WANTED),
          new Setting("ATM0", Need.WANTED));

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

  /**
   * Sets a protocol without searching.
   *
   * @param number one hex digit 1 to 9
   */
  public static String fixed(String number) {
    return "ATTP" + number;
  }

  /**
   * Sets how long the adapter waits for an answer.
   *
   * @param units 1 to 0xFF, each 4.096 ms
   */
  public static String timeout(int units) {
    return "ATST%02X".formatted(units);
  }

  /**
   * Sets the header of the requests that follow: three hex digits, or eight of a 29-bit one, of
   * which the adapter adds the first two, 18, by itself.
   */
  public static String header(String header) {
    boolean isLong = header.length() == 8 && header.startsWith("18");
    return "ATSH" + (isLong ? header.substring(2) : header);
  }
}
