package steadypull.adapter.diagnostic;

/** ISO 14229-1 negative response codes by what a reader does about them. */
public enum NegativeCode {
  /** 78: the real answer is still to come. */
  PENDING,
  /** 21: the control unit is busy; ask again soon. */
  BUSY,
  /** 22: not under the present conditions; ask again much later. */
  NOT_NOW,
  /** 13, 14: too much asked at once; ask for one thing at a time. */
  TOO_MUCH,
  /** 11, 12, 31, 33, 7E, 7F: not here; do not ask again. */
  NEVER,
  /** 10 and codes without a rule of their own: do not ask again after a few times. */
  GENERAL;

  /** The rule for a code from 0 to 0xFF. */
  public static NegativeCode of(int code) {
    return switch (code) {
      case 0x78 -> PENDING;
      case 0x21 -> BUSY;
      case 0x22 -> NOT_NOW;
      case 0x13, 0x14 -> TOO_MUCH;
      case 0x11, 0x12, 0x31, 0x33, 0x7E, 0x7F -> NEVER;
      default -> GENERAL;
    };
  }
}
