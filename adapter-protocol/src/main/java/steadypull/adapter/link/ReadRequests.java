package steadypull.adapter.link;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

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

  /** Diagnostic request headers: 11-bit, 29-bit (two forms), ISO 9141-2 and J1850, ISO 14230. */
  private static final String HEADER =
      "([67][0-9A-F]{2}|(18)?DA[0-9A-F]{2}F1|(18)?DB33F1|6[18]6AF1|[8C][0-9A-F]{3}F1)";

  /**
   * Adapter commands that neither store a setting for good nor put a frame of their own on the bus.
   * Left out on purpose:
   *
   * <ul>
   *   <li>SP stores the protocol on many adapters; TP tries it without storing.
   *   <li>CAF0 would make the first byte of a request its length: then 01 04 is service 04.
   *   <li>Flow control goes as FC settings only: as a request line, 30 00 00 would be service 30.
   *   <li>MA and its relatives, RTR, WM, PP, BRD, LP, SD, @2, @3, CEA.
   * </ul>
   */
  private static final List<Pattern> ADAPTER_COMMANDS =
      List.of(
          Pattern.compile("AT(Z|WS|I|@1|D|RV|IGN|PC|DPN?)"),
          Pattern.compile("AT(E[01]|L[01]|S[01]|H[01]|M0|AL|CAF1|CFC1|AT[0-2]|ST[0-9A-F]{2})"),
          Pattern.compile("ATTP(0|A?[1-9])"),
          Pattern.compile("AT(SH|FCSH)" + HEADER),
          Pattern.compile("ATCP18"),
          Pattern.compile("AT(AR|CRA([0-9A-F]{3}|[0-9A-F]{8})?)"),
          Pattern.compile("ATFC(SM[0-2]|SD3[0-2][0-9A-F]{4})"));

  private ReadRequests() {}

  static boolean permits(String line) {
    if (!line.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return false;
    }
    String bare = line.replace(" ", "").toUpperCase(Locale.ROOT);
    return REQUEST.matcher(bare).matches()
        || ADAPTER_COMMANDS.stream().anyMatch(command -> command.matcher(bare).matches());
  }
}
