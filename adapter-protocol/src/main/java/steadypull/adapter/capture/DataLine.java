package steadypull.adapter.capture;

import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A line of an adapter that carries bytes in hex, open to change in place. Blanks and NULs between
 * the digits are passed over. One thread.
 */
final class DataLine {
  private static final String SEARCH = "(?:SEARCHING\\.*|BUSINIT:?\\.*(?:OK)?)?";
  private static final String HEX = "[0-9A-Fa-f]";
  private static final String ERROR = "(?:<.*)?";

  /** How the bytes stand in the line. A closed set. */
  enum Form {
    /** CAN frame with its identifier: ISO 15765-2 bytes follow. */
    FRAME(SEARCH + "(?<header>18D[ABab]" + HEX + "{4}|" + HEX + "{3})", "{1,8}" + ERROR),
    /** CAN frame of the serial-line CAN protocol; a time stamp may follow. */
    SERIAL_FRAME("(?:t(?<header>" + HEX + "{3})|T(?<longHeader>" + HEX + "{8}))[1-8]", "{1,10}"),
    /** Numbered line of a long message, without headers. */
    NUMBERED(SEARCH + "(?<header>" + HEX + "):", "{1,8}" + ERROR),
    /** Anything else of whole bytes: the older buses, or no headers. */
    OTHER(SEARCH + "(?<header>)", "+" + ERROR);

    private final Pattern pattern;

    Form(String before, String repeated) {
      pattern = Pattern.compile(before + "(?<octets>(?:" + HEX + HEX + ")" + repeated + ")");
    }
  }

  private final char[] text;
  private final int[] places;
  private final Form form;
  private final String header;
  private final int start;
  private final int count;

  private DataLine(char[] text, int[] places, Form form, Matcher matcher) {
    this.text = text;
    this.places = places;
    this.form = form;
    this.header = Optional.ofNullable(matcher.group("header")).orElseGet(() -> longHeader(matcher));
    this.start = matcher.start("octets");
    int error = matcher.group("octets").indexOf('<');
    this.count = (error < 0 ? matcher.group("octets").length() : error) / 2;
  }

  private static String longHeader(Matcher matcher) {
    return matcher.group("longHeader");
  }

  /** Reads a line; empty if it is a text, or damaged. */
  static Optional<DataLine> of(char[] text) {
    int[] places = places(text);
    String bare = bare(text, places);
    for (Form form : List.of(Form.values())) {
      Matcher matcher = form.pattern.matcher(bare);
      if (matcher.matches()) {
        return Optional.of(new DataLine(text, places, form, matcher));
      }
    }
    return Optional.empty();
  }

  /** Where the characters stand that count. */
  static int[] places(char[] text) {
    return IntStream.range(0, text.length).filter(i -> text[i] != ' ' && text[i] != 0).toArray();
  }

  /** The characters that count. */
  static String bare(char[] text, int[] places) {
    StringBuilder bare = new StringBuilder();
    for (int place : places) {
      bare.append(text[place]);
    }
    return bare.toString();
  }

  Form form() {
    return form;
  }

  /** Identifier of a frame or number of a line; empty text where there is none. */
  String header() {
    return header;
  }

  int count() {
    return count;
  }

  int octet(int index) {
    int at = start + 2 * index;
    return HexFormat.fromHexDigit(text[places[at]]) * 16
        + HexFormat.fromHexDigit(text[places[at + 1]]);
  }

  void set(int index, int value) {
    int at = start + 2 * index;
    String digits = HexFormat.of().withUpperCase().toHexDigits((byte) value);
    text[places[at]] = digits.charAt(0);
    text[places[at + 1]] = digits.charAt(1);
  }

  boolean hasAt(int index, int... expected) {
    if (index + expected.length > count) {
      return false;
    }
    return IntStream.range(0, expected.length).allMatch(i -> octet(index + i) == expected[i]);
  }

  byte[] octets() {
    byte[] octets = new byte[count];
    for (int i = 0; i < count; i++) {
      octets[i] = (byte) octet(i);
    }
    return octets;
  }
}
