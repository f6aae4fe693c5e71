package steadypull.adapter.capture;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import steadypull.adapter.frame.Checksum;
import steadypull.adapter.frame.Payload;

/**
 * Puts other characters in place of a vehicle identification number, in every form in which an
 * adapter may print it and at equal length, so that what is left still reads as an answer. It goes
 * by the answers of SAE J1979 service 09 item 02 and of the identifiers F190 (ISO 14229) and F802
 * (SAE J1979-2). While such an answer may come, what is damaged is blotted out altogether; a number
 * that was seen once is known again anywhere. Lines come in order; one thread.
 */
final class VinMask {
  private static final Pattern VIN_REQUEST =
      Pattern.compile("0902.*|22.*(?:F190|F802).*|T.*(?:0902|F190|F802).*");

  /** Flow control of the serial-line CAN protocol, which belongs to the answer before it. */
  private static final Pattern FLOW_CONTROL =
      Pattern.compile("T(?:[0-9A-F]{3}|[0-9A-F]{8})[1-8]3[0-2].*");

  /** An answer may be late by so many requests. */
  private static final int WATCHED_REQUESTS = 4;

  private static final Pattern HEX_RUN = Pattern.compile("[0-9A-Fa-f]{6}");
  private static final int OLDER_HEADER = 3;
  private static final int NEGATIVE = 0x7F;

  private final KnownVins known = new KnownVins();

  /** By header: the number that a long message carries, or empty if it carries something else. */
  private final Map<String, Optional<VinInHand>> messages = new HashMap<>();

  private int watched;
  private boolean isFirstReply;

  /** Takes what is sent. */
  void asked(String text) {
    String bare = text.replaceAll("[ \r]", "").toUpperCase(Locale.ROOT);
    if (VIN_REQUEST.matcher(bare).matches()) {
      messages.clear();
      watched = WATCHED_REQUESTS;
      isFirstReply = true;
    } else if (!FLOW_CONTROL.matcher(bare).matches()) {
      watched = Math.max(0, watched - 1);
      isFirstReply = false;
    }
  }

  /**
   * Masks a line.
   *
   * @param text without its end
   * @param isWhole false for a part whose rest did not come
   * @return of the same length
   */
  String masked(String text, boolean isWhole) {
    char[] line = text.toCharArray();
    Optional<DataLine> data = isWhole ? DataLine.of(line) : Optional.empty();
    boolean isSound = data.map(this::mask).orElse(false);
    if (!isSound && watched > 0) {
      blot(line, isWhole);
    }
    known.mask(line, data.isPresent());
    return new String(line);
  }

  /** Masks what is understood; false if the line is damaged. */
  private boolean mask(DataLine line) {
    return switch (line.form()) {
      case FRAME, SERIAL_FRAME -> maskFrame(line);
      case NUMBERED -> line.header().equals("0") ? begin("", line, 0) : go("", line, 0);
      case OTHER -> maskOther(line);
    };
  }

  /** ISO 15765-2: the upper half of the first byte tells single, first and consecutive frames. */
  private boolean maskFrame(DataLine line) {
    return switch (line.octet(0) >> 4) {
      case 0 -> maskSingle(line);
      case 1 -> line.count() > 2 && begin(line.header(), line, 2);
      case 2 -> go(line.header(), line, 1);
      default -> false;
    };
  }

  /** A single frame is too short for the number, unless it is a damaged one of a longer message. */
  private boolean maskSingle(DataLine line) {
    int length = line.octet(0);
    if (length == 0 || length >= line.count()) {
      return false;
    }
    if (isVinAnswer(line, 1)) {
      return begin(line.header(), line, 1);
    }
    if (isFirstReply && line.octet(1) != NEGATIVE) {
      return false;
    }
    messages.put(line.header(), Optional.empty());
    for (int i = length + 1; isFirstReply && i < line.count(); i++) {
      line.set(i, 0);
    }
    return true;
  }

  /** The first line of a long message. */
  private boolean begin(String header, DataLine line, int payloadStart) {
    boolean isVin = isFirstReply || isVinAnswer(line, payloadStart);
    messages.put(header, isVin ? Optional.of(new VinInHand(known, 0)) : Optional.empty());
    return go(header, line, afterSignature(line, payloadStart));
  }

  /** A further line of a long message, whose first may have been lost. */
  private boolean go(String header, DataLine line, int start) {
    Optional<VinInHand> vin = messages.get(header);
    boolean isUnknown = vin == null && watched > 0;
    if (vin != null && vin.isPresent()) {
      vin.get().mask(line, start, line.count());
    } else if (isUnknown || isFirstReply) {
      VinInHand.unnumbered(known).mask(line, start, line.count());
    }
    return true;
  }

  private boolean maskOther(DataLine line) {
    if (isVinAnswer(line, OLDER_HEADER)) {
      maskOlder(line);
      return true;
    }
    if (isVinAnswer(line, 0)) {
      messages.put("", Optional.of(new VinInHand(known, 0)));
      return go("", line, afterSignature(line, 0));
    }
    boolean isEcho = line.count() <= 4;
    return isEcho || (isOlderBus(line) && checksum(line).isPresent());
  }

  /**
   * A damaged frame may look like a line of an older bus. Its check byte fits once in a hundred
   * times, so the header has to be one (SAE J1850, ISO 9141-2; ISO 14230 with its length), and an
   * answer to the question for the number can only be a refusal.
   */
  private boolean isOlderBus(DataLine line) {
    int first = line.octet(0);
    boolean isHeader =
        first == 0x48
            || first == 0x41
            || (first >= 0x80 && (first & 0x3F) == line.count() - OLDER_HEADER - 1);
    return isHeader && (!isFirstReply || line.hasAt(OLDER_HEADER, NEGATIVE));
  }

  /** Five messages of four characters each; the first begins with three of no meaning. */
  private void maskOlder(DataLine line) {
    Optional<Checksum> checksum = checksum(line);
    int last = line.count() - 1;
    boolean isNumbered = line.octet(OLDER_HEADER) == 0x49 && last > OLDER_HEADER + 2;
    int first = isNumbered ? (line.octet(OLDER_HEADER + 2) - 1) * 4 - 3 : 0;
    new VinInHand(known, Math.max(0, first))
        .mask(line, OLDER_HEADER + 3, checksum.isPresent() ? last : line.count());
    checksum.ifPresent(sum -> line.set(last, sum.of(Payload.of(line.octets()).slice(0, last))));
  }

  private static Optional<Checksum> checksum(DataLine line) {
    Payload octets = Payload.of(line.octets());
    int last = octets.size() - 1;
    for (Checksum checksum : Checksum.values()) {
      if (last > OLDER_HEADER && checksum.of(octets.slice(0, last)) == octets.at(last)) {
        return Optional.of(checksum);
      }
    }
    return Optional.empty();
  }

  private static boolean isVinAnswer(DataLine line, int at) {
    return line.hasAt(at, 0x49, 0x02)
        || line.hasAt(at, 0x62, 0xF1, 0x90)
        || line.hasAt(at, 0x62, 0xF8, 0x02);
  }

  /** The service byte of an answer to several identifiers is no character of the number either. */
  private static int afterSignature(DataLine line, int at) {
    if (line.hasAt(at, 0x49, 0x02)) {
      return at + 2;
    }
    return isVinAnswer(line, at) ? at + 3 : at + 1;
  }

  /** Long runs of hex become zeros; so does all hex of a part of a line. */
  private static void blot(char[] line, boolean isWhole) {
    int[] places = DataLine.places(line);
    if (isWhole && !HEX_RUN.matcher(DataLine.bare(line, places)).find()) {
      return;
    }
    for (int place : places) {
      if (Character.digit(line[place], 16) >= 0) {
        line[place] = '0';
      }
    }
  }
}
