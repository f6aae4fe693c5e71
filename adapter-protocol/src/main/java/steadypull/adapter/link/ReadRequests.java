package steadypull.adapter.link;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The lines that only read. An adapter ignores blanks and case, so lines are compared without them;
 * any other character outside printable ASCII makes a line unknown, and what is unknown is refused.
 *
 * <p>Every request fits one CAN frame (at most 7 bytes), so that the shapes below are all there is.
 * A hex digit left over at the end is the number of answers to wait for.
 */
final class ReadRequests {
  /**
   * SAE J1979 services that read: 01 with up to six parameters, 02 with up to three pairs of
   * parameter and frame, 03, 07 and 0A alone, 09 with one item; ISO 14229 service 22 with up to
   * three identifiers.
   */
  private static final Pattern REQUEST =
      Pattern.compile(
          "(01([0-9A-F]{2}){1,6}|02([0-9A-F]{4}){1,3}|0[37A]|09[0-9A-F]{2}|22([0-9A-F]{4}){1,3})"
              + "[1-9A-F]?");

  /**
   * Diagnostic request headers: 11-bit identifiers of requests, or the last three bytes of a 29-bit
   * one. 7E8 to 7EF belong to the answers (ISO 15765-4): a request there would pose as a control
   * unit.
   */
  private static final String HEADER = "((?!7E[89A-F])[67][0-9A-F]{2}|DA[0-9A-F]{2}F1|DB33F1)";

  /**
   * The adapter commands that the reader uses, and no others. Left out on purpose, besides all that
   * is unknown:
   *
   * <ul>
   *   <li>SP stores the protocol on many adapters; TP tries it without storing.
   *   <li>CAF0 would make the first byte of a request its length: then 01 04 is service 04.
   *   <li>Flow control as a request line: 30 00 00 would be service 30. The adapter answers first
   *       frames by itself.
   *   <li>MA and its relatives, RTR, WM, PP, BRD, LP, SD, @2, @3, CEA, FC.
   * </ul>
   */
  private static final List<Pattern> ADAPTER_COMMANDS =
      Stream.of(
              // Resets the adapter itself and what another program set.
              "ATZ",
              // The same, quicker and without losing the baud rate.
              "ATWS",
              // Tells the adapter's name.
              "ATI",
              // Does not repeat what it is told; until the next reset.
              "ATE0",
              // Ends lines with a return only; until the next reset.
              "ATL0",
              // Prints no blanks; until the next reset.
              "ATS0",
              // Shows who answers; until the next reset.
              "ATH1",
              // Adds the length byte to requests, which keeps 01 04 a question.
              "ATCAF1",
              // Shortens its waiting by what it learns; until the next reset.
              "ATAT1",
              // Sets how long it waits for an answer; until the next reset.
              "ATST[0-9A-F]{2}",
              // Keeps the protocol that it finds out of its lasting memory.
              "ATM0",
              // Tries protocols without storing; while trying asks 01 00.
              "ATTP(0|A?[1-9])",
              // Tells the protocol.
              "ATDPN?",
              // Tells the voltage at the plug.
              "ATRV",
              // Ends the protocol; at most that ends its own diagnostic session.
              "ATPC",
              // Addresses requests; whatever it is, they only read.
              "ATSH" + HEADER)
          .map(Pattern::compile)
          .toList();

  /**
   * Asks whether a serial CAN adapter is there instead; to an AT-command adapter it is no word. As
   * it stands and no other way, because a serial CAN adapter tells capitals and blanks apart.
   */
  private static final String SERIAL_CAN_VERSION = "V";

  private ReadRequests() {}

  /** Whether hex digits, upper case without blanks, are a request and nothing else. */
  static boolean isRequest(String bare) {
    return REQUEST.matcher(bare).matches();
  }

  static boolean permits(String line) {
    if (!line.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return false;
    }
    String bare = line.replace(" ", "").toUpperCase(Locale.ROOT);
    return line.equals(SERIAL_CAN_VERSION)
        || isRequest(bare)
        || ADAPTER_COMMANDS.stream().anyMatch(command -> command.matcher(bare).matches());
  }
}
