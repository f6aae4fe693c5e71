package steadypull.demo.bench;

import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** How an adapter differs from one that does everything. */
enum AdapterTrait {
  /** Does not know the number of answers behind a request. */
  NO_COUNTS(""),
  /** Does not know the command that shows headers. */
  NO_HEADERS("H[01]"),
  /** Says OK to the command that shows headers and shows none. */
  SHAM_HEADERS(""),
  /** Does not know the command about formatting; formats all the same. */
  NO_FORMATTING("CAF[01]"),
  /** Does not know the commands about adaptive timing. */
  NO_ADAPTIVE("AT[012]"),
  /** Does not know the command that sets the timeout. */
  NO_TIMEOUT("ST.*"),
  /** Does not know the command that keeps the protocol out of its memory. */
  NO_MEMORY("M[01]"),
  /** Does not tell the protocol. */
  NO_PROTOCOL("DPN?"),
  /** Does not tell the supply voltage. */
  NO_VOLTAGE("RV"),
  /** Does not know the warm start. */
  NO_WARM_START("WS"),
  /** Says OK to switching the echo off and echoes on. */
  ECHO(""),
  /** Loses data when more than 512 characters wait for the serial line. */
  SMALL_BUFFER(""),
  /** Takes 40 ms longer over everything. */
  SLOW(""),
  /**
   * Goes to sleep after five minutes in which it heard nothing; a byte wakes it, or the rising
   * supply when the engine is started.
   */
  SLEEPY(""),
  /** No AT dialogue: CAN frames as lines of text. */
  SERIAL_CAN("");

  private final Pattern unknown;

  AdapterTrait(String unknown) {
    this.unknown = Pattern.compile(unknown);
  }

  /** Whether such an adapter does not know a command, given without AT and blanks. */
  boolean refuses(String command) {
    return unknown.matcher(command).matches();
  }

  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Finds a trait.
   *
   * @throws IllegalArgumentException if none is written so
   */
  static AdapterTrait of(String word) {
    for (AdapterTrait each : values()) {
      if (each.word().equals(word)) {
        return each;
      }
    }
    throw new IllegalArgumentException(
        NearMatch.notFound("trait", word, Stream.of(values()).map(AdapterTrait::word).toList()));
  }
}
