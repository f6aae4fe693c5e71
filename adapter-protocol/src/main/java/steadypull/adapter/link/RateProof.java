package steadypull.adapter.link;

/**
 * Tells from what comes that the baud rate is right. At a wrong rate any character may come by
 * chance, but hardly a prompt behind plain text, or a whole line of a serial CAN adapter: its
 * version, or a frame of eight bytes. Used by one thread.
 */
final class RateProof {
  private static final byte PROMPT = '>';
  private static final byte BELL = 7;
  private static final int PLAIN_BEFORE_PROMPT = 4;

  /** V and four characters. */
  private static final int VERSION_LENGTH = 5;

  /** t, three digits of the identifier, the length, eight bytes; more with a long identifier. */
  private static final int SHORTEST_FRAME = 21;

  private int plainCharacters;
  private int lineLength;
  private byte kind;

  /** Takes bytes as they arrive; whether the proof is in them, with those before. */
  boolean isIn(byte[] came, int count) {
    boolean isProven = false;
    for (int i = 0; i < count; i++) {
      isProven |= isLast(came[i]);
    }
    return isProven;
  }

  private boolean isLast(byte one) {
    boolean isPrompt = one == PROMPT && plainCharacters >= PLAIN_BEFORE_PROMPT;
    plainCharacters = isPlain(one) ? plainCharacters + 1 : 0;
    if (one == '\r' || one == BELL) {
      boolean isLine = one == '\r' && isLineOfSerialCan();
      lineLength = 0;
      kind = 0;
      return isLine;
    }
    kind = lineLength == 0 ? one : isLetterOrDigit(one) ? kind : 0;
    lineLength++;
    return isPrompt;
  }

  private boolean isLineOfSerialCan() {
    return switch (kind) {
      case 'V' -> lineLength == VERSION_LENGTH;
      case 't', 'T' -> lineLength >= SHORTEST_FRAME;
      default -> false;
    };
  }

  private static boolean isPlain(byte one) {
    return (one >= ' ' && one <= '~') || one == '\r' || one == '\n';
  }

  private static boolean isLetterOrDigit(byte one) {
    return (one >= '0' && one <= '9') || (one >= 'A' && one <= 'Z') || (one >= 'a' && one <= 'z');
  }
}
