package steadypull.adapter.link;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The lines to a serial CAN adapter that only read. Here the program builds whole frames, so the
 * gate looks into them: whom they address, that they are one question of a reading service in a
 * single frame, or the flow control that lets a control unit go on answering. First and consecutive
 * frames are refused: every permitted question fits a single frame.
 */
final class SerialCanRequests {
  /**
   * V version, N serial number, F status flags, C off the bus, O on the bus, Z0 no time stamps, S6
   * 500 kbit/s, S5 250 kbit/s: nothing of it outlives the adapter's power or reaches the vehicle.
   * Left out besides all that is unknown: L (listening only cannot ask), other bit rates, s (bit
   * timing), M and m (filters), X, Q (stored settings), U, r and R (remote frames).
   */
  private static final Pattern SETTING = Pattern.compile("[VNFCO]|Z0|S[56]");

  /**
   * Request identifiers of ISO 15765-4, eight data bytes: 7DF and 18DB33F1 address everybody, 7E0
   * to 7E7 and 18DAxxF1 one control unit; F1 is the tester itself.
   */
  private static final Pattern FRAME =
      Pattern.compile(
          "(?:t(?:(?<everybody>7DF)|7E[0-7])"
              + "|T(?:(?<everybodyLong>18DB33F1)|18DA(?!F1)[0-9A-F]{2}F1))"
              + "8(?<data>[0-9A-F]{16})");

  /** Continue, wait or overflow; block size, separation; filler. */
  private static final Pattern FLOW_CONTROL = Pattern.compile("3[0-2][0-9A-F]{4}0{10}");

  private static final int MOST_IN_SINGLE = 7;

  private SerialCanRequests() {}

  /** Tells whether a line, without its return, is one of them. Case matters in this protocol. */
  static boolean permits(String line) {
    Matcher frame = FRAME.matcher(line);
    if (!frame.matches()) {
      return SETTING.matcher(line).matches();
    }
    String data = frame.group("data");
    boolean isToEverybody =
        frame.group("everybody") != null || frame.group("everybodyLong") != null;
    return isQuestion(data) || (!isToEverybody && FLOW_CONTROL.matcher(data).matches());
  }

  /** A single frame: its length, a permitted request of just that length, zeros. */
  private static boolean isQuestion(String data) {
    int length = Integer.parseInt(data.substring(0, 2), 16);
    if (length < 1 || length > MOST_IN_SINGLE) {
      return false;
    }
    int end = 2 + 2 * length;
    return ReadRequests.isRequest(data.substring(2, end)) && data.substring(end).matches("0*");
  }
}
