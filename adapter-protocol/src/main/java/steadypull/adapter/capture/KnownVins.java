package steadypull.adapter.capture;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers that were seen, so that they are masked wherever they appear again. One thread. */
final class KnownVins {
  static final int LENGTH = 17;

  /** Stands in place of a number; no maker begins so, and it says what it is. */
  private static final String FILLER = "STEADYPULLMASKED0";

  /** So many characters in a row are no chance. */
  private static final int RUN = 4;

  /** ISO 3779 in plain text; at least one digit, so that words are left alone. */
  private static final Pattern IN_TEXT =
      Pattern.compile("(?<![A-Z0-9])(?=[A-Z]*[0-9])[A-HJ-NPR-Z0-9]{17}(?![A-Z0-9])");

  private final Set<String> known = new LinkedHashSet<>();

  /** What stands in place of a character, by its place in the number. */
  static char filler(int place) {
    return place < LENGTH ? FILLER.charAt(place) : 'X';
  }

  /** Remembers a number; one that was heard in part only is not remembered. */
  void learn(String vin) {
    if (vin.indexOf(' ') < 0) {
      known.add(vin);
    }
  }

  /**
   * Masks in place.
   *
   * @param isData whether the line is bytes in hex; else it is a text
   */
  void mask(char[] line, boolean isData) {
    if (!isData) {
      Matcher whole = IN_TEXT.matcher(new String(line));
      while (whole.find()) {
        FILLER.getChars(0, LENGTH, line, whole.start());
      }
    }
    for (String vin : known) {
      for (int at = 0; at + RUN <= LENGTH; at++) {
        String run = vin.substring(at, at + RUN);
        replace(line, isData ? hex(run) : run, isData ? hex(filler(at, RUN)) : filler(at, RUN));
      }
    }
  }

  private static void replace(char[] line, String sought, String filler) {
    int[] places = DataLine.places(line);
    String bare = DataLine.bare(line, places).toUpperCase(Locale.ROOT);
    for (int at = bare.indexOf(sought); at >= 0; at = bare.indexOf(sought, at + 1)) {
      for (int i = 0; i < filler.length(); i++) {
        line[places[at + i]] = filler.charAt(i);
      }
    }
  }

  private static String filler(int at, int length) {
    return FILLER.substring(at, at + length);
  }

  private static String hex(String text) {
    return HexFormat.of().withUpperCase().formatHex(text.getBytes(StandardCharsets.US_ASCII));
  }
}
