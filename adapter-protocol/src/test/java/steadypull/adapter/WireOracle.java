package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Tells from the bytes alone whether a line to an adapter can do more than read. Written from the
 * reference sheets, without the gate's own code: what an adapter makes of a line once blanks and
 * case are gone, and which service then reaches the vehicle.
 *
 * <p>Whoever lets a further line through the gate adds it here, with what it does.
 */
final class WireOracle {
  /** SAE J1979 services that read, and ISO 14229 service 22 (read data by identifier). */
  private static final Set<String> READING_SERVICES =
      Set.of("01", "02", "03", "07", "09", "0A", "22");

  /** Set-up lines of the AT dialogue that reach no vehicle, or only as the question 01 00. */
  private static final Set<String> SET_UP_LINES =
      Set.of(
          "ATZ", "ATWS", "ATI", "ATE0", "ATL0", "ATS0", "ATH1", "ATCAF1", "ATAT1", "ATM0", "ATDP",
          "ATDPN", "ATRV", "ATPC", "ATTP0");

  /** Lines of the serial CAN dialogue that reach no vehicle. */
  private static final Set<String> SERIAL_CAN_SET_UP =
      Set.of("V", "N", "F", "C", "O", "Z0", "S5", "S6");

  private static final int MOST_BYTES_IN_A_FRAME = 7;

  private WireOracle() {}

  /** What is wrong with one write; empty if it only reads. */
  static Optional<String> fault(byte[] written) {
    String text = new String(written, StandardCharsets.ISO_8859_1);
    if (text.equals("\r")) {
      return Optional.empty(); // completes a line of ours; a gate test of its own watches the first
    }
    if (!text.endsWith("\r") || text.indexOf('\r') != text.length() - 1) {
      return Optional.of("is not one line: " + text);
    }
    String line = text.substring(0, text.length() - 1);
    if (!line.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return Optional.of("has bytes of no meaning: " + line);
    }
    if (SERIAL_CAN_SET_UP.contains(line) || line.startsWith("t") || line.startsWith("T")) {
      return serialCan(line);
    }
    String seen = line.replace(" ", "").toUpperCase(Locale.ROOT);
    return seen.startsWith("AT") ? command(seen) : request(seen);
  }

  /** Fails unless every write only reads. */
  static void requireOnlyReading(List<byte[]> written) {
    for (byte[] line : written) {
      Optional<String> fault = fault(line);
      if (fault.isPresent()) {
        throw new AssertionError("Something on the wire " + fault.get());
      }
    }
  }

  private static Optional<String> command(String seen) {
    boolean isListed =
        SET_UP_LINES.contains(seen)
            // Tries one protocol first, without storing it.
            || (seen.length() == 6
                && seen.startsWith("ATTPA")
                && "123456789".indexOf(seen.charAt(5)) >= 0)
            // Tries that protocol and no other, without storing it.
            || (seen.length() == 5
                && seen.startsWith("ATTP")
                && "123456789".indexOf(seen.charAt(4)) >= 0)
            // How long the adapter waits for answers.
            || (seen.length() == 6 && seen.startsWith("ATST") && isHex(seen.substring(4)))
            || (seen.startsWith("ATSH") && isRequestHeader(seen.substring(4)));
    return isListed ? Optional.empty() : Optional.of("is no listed command: " + seen);
  }

  /** ISO 15765-4: requests are 7DF, 7E0 to 7E7, 18DB33F1, 18DAxxF1; 7E8 to 7EF are answers. */
  private static boolean isRequestHeader(String header) {
    if (header.length() == 3) {
      int id = isHex(header) ? Integer.parseInt(header, 16) : 0;
      return id >= 0x600 && id <= 0x7FF && (id < 0x7E8 || id > 0x7EF);
    }
    return header.length() == 6
        && isHex(header)
        && (header.equals("DB33F1") || (header.startsWith("DA") && header.endsWith("F1")));
  }

  /** An odd digit at the end is the number of answers. */
  private static Optional<String> request(String seen) {
    if (!isHex(seen) || seen.length() < 2) {
      return Optional.of("is no request: " + seen);
    }
    return request(seen.substring(0, 2), seen.length() / 2, seen);
  }

  private static Optional<String> request(String service, int bytes, String seen) {
    if (!READING_SERVICES.contains(service)) {
      return Optional.of("asks for service " + service + ": " + seen);
    }
    return bytes > MOST_BYTES_IN_A_FRAME
        ? Optional.of("does not fit one frame: " + seen)
        : Optional.empty();
  }

  /** A frame that the program built itself: single frames that read, and flow control. */
  private static Optional<String> serialCan(String line) {
    if (SERIAL_CAN_SET_UP.contains(line)) {
      return Optional.empty();
    }
    int idDigits = line.startsWith("t") ? 3 : 8;
    String rest = line.substring(Math.min(line.length(), 1 + idDigits));
    if (rest.length() != 17 || rest.charAt(0) != '8' || !isHex(line.substring(1))) {
      return Optional.of("is no whole frame: " + line);
    }
    String id = line.substring(1, 1 + idDigits);
    if (!isRequestHeader(idDigits == 3 ? id : id.replaceFirst("^18", ""))) {
      return Optional.of("addresses nobody who may be asked: " + line);
    }
    String data = rest.substring(1);
    return switch (data.charAt(0)) {
      case '0' -> request(data.substring(2, 4), Character.digit(data.charAt(1), 16), line);
      case '3' -> Optional.empty();
      default -> Optional.of("is a part of a long message: " + line);
    };
  }

  private static boolean isHex(String text) {
    return !text.isEmpty() && text.chars().allMatch(c -> Character.digit(c, 16) >= 0 && c < 128);
  }
}
