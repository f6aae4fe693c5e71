package steadypull.demo.bench;

/**
 * A trouble code that a control unit notices during the drive.
 *
 * @param code a letter and four hex digits, such as P0299
 * @param fromSeconds when it is noticed, on the bench's clock
 * @param isConfirmed whether it is stored and lasting, or only pending
 */
record StoredCode(String code, double fromSeconds, boolean isConfirmed) {
  private static final String LETTERS = "PCBU";

  StoredCode {
    if (!code.matches("[PCBU][0-3][0-9A-F]{3}") || !(fromSeconds >= 0)) {
      throw new IllegalArgumentException(
          "A trouble code is a letter P, C, B or U, a digit 0 to 3 and three hex digits, noticed at"
              + " 0 s or later; found "
              + code
              + " at "
              + fromSeconds);
    }
  }

  /** Reads {@code CODE} or {@code CODE@SECONDS}. */
  static StoredCode parse(String text, boolean isConfirmed) {
    int at = text.indexOf('@');
    return at < 0
        ? new StoredCode(text, 0, isConfirmed)
        : new StoredCode(
            text.substring(0, at), Double.parseDouble(text.substring(at + 1)), isConfirmed);
  }

  /** Whether the gearbox's control unit is the one to notice it: P07xx to P09xx (SAE J2012). */
  boolean isOfGearbox() {
    return code.matches("P0[789].*");
  }

  /** Two bytes: letter in bits 15 and 14, first digit in 13 and 12, then the hex digits. */
  byte[] bytes() {
    int rest = Integer.parseInt(code.substring(1), 16);
    int packed = LETTERS.indexOf(code.charAt(0)) << 14 | rest;
    return new byte[] {(byte) (packed >> 8), (byte) packed};
  }
}
