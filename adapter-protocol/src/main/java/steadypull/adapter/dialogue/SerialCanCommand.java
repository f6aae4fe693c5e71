package steadypull.adapter.dialogue;

/**
 * The lines that this program says to a serial CAN adapter, without their return. None listens only
 * (it could not ask), none sets filters or bit timing (their meaning differs between adapters),
 * none stores anything. Stateless.
 */
public final class SerialCanCommand {
  /** Asks for the version; also the question whether a port has such an adapter. */
  public static final String VERSION = "V";

  /**
   * Takes the adapter off the bus; ends also the repetition of a frame that nobody acknowledges.
   */
  public static final String CLOSE = "C";

  /** Puts the adapter on the bus. */
  public static final String OPEN = "O";

  /** Asks for the status flags. */
  public static final String STATUS = "F";

  /** No time stamps behind frames. */
  public static final String NO_TIME_STAMPS = "Z0";

  private SerialCanCommand() {}

  /**
   * Sets the bit rate while the channel is closed.
   *
   * @param kilobits 500 or 250, the rates of ISO 15765-4
   */
  public static String bitRate(int kilobits) {
    return switch (kilobits) {
      case 500 -> "S6";
      case 250 -> "S5";
      default ->
          throw new IllegalArgumentException(
              "Diagnostics over CAN runs at 500 or 250 kbit/s, found " + kilobits);
    };
  }

  /**
   * Sends a data frame.
   *
   * @param identifier 0 to 7FF, or to 1FFFFFFF if long
   * @param isLong whether the identifier has 29 bits
   * @param data hex digits of up to eight bytes
   */
  public static String frame(int identifier, boolean isLong, String data) {
    return (isLong ? "T%08X" : "t%03X").formatted(identifier) + data.length() / 2 + data;
  }
}
