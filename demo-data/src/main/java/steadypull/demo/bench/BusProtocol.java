package steadypull.demo.bench;

/**
 * The bus of the vehicle on the bench, by the number that an AT-command adapter gives it. Headers
 * and rates as in the sheet of transports, sections 1 and 3 (ISO 15765-4, SAE J1850, ISO 9141-2,
 * ISO 14230-4, from memory there).
 */
enum BusProtocol {
  J1850_PWM('1', "SAE J1850 PWM", 41_600),
  J1850_VPW('2', "SAE J1850 VPW", 10_400),
  ISO_9141('3', "ISO 9141-2", 10_400),
  ISO_14230_SLOW('4', "ISO 14230-4 (KWP 5BAUD)", 10_400),
  ISO_14230_FAST('5', "ISO 14230-4 (KWP FAST)", 10_400),
  CAN_11_500('6', "ISO 15765-4 (CAN 11/500)", 500_000),
  CAN_29_500('7', "ISO 15765-4 (CAN 29/500)", 500_000),
  CAN_11_250('8', "ISO 15765-4 (CAN 11/250)", 250_000),
  CAN_29_250('9', "ISO 15765-4 (CAN 29/250)", 250_000);

  private final char number;
  private final String words;
  private final int bitsPerSecond;

  BusProtocol(char number, String words, int bitsPerSecond) {
    this.number = number;
    this.words = words;
    this.bitsPerSecond = bitsPerSecond;
  }

  /**
   * Finds a protocol.
   *
   * @param number 1 to 9
   * @throws IllegalArgumentException if there is none of that number
   */
  static BusProtocol of(String number) {
    for (BusProtocol each : values()) {
      if (number.equals(String.valueOf(each.number))) {
        return each;
      }
    }
    throw new IllegalArgumentException("A protocol is a number from 1 to 9, found " + number);
  }

  char number() {
    return number;
  }

  String words() {
    return words;
  }

  int bitsPerSecond() {
    return bitsPerSecond;
  }

  boolean isCan() {
    return number >= '6';
  }

  /** Whether identifiers on this CAN bus have 29 bits. */
  boolean isLong() {
    return this == CAN_29_500 || this == CAN_29_250;
  }

  /** Whether a session has to be begun, and is lost by silence. */
  boolean isKLine() {
    return this == ISO_9141 || isIso14230();
  }

  boolean isIso14230() {
    return this == ISO_14230_SLOW || this == ISO_14230_FAST;
  }

  /** What a search spends on trying this protocol (estimated from the length of its start). */
  long tryingNanos() {
    return isKLine() && this != ISO_14230_FAST ? 2_600_000_000L : 450_000_000L;
  }
}
