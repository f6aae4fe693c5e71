package steadypull.adapter.link;

/**
 * The one line that goes out again and again, judged on its bytes: service 01 with one to six
 * parameters in upper-case hex, perhaps the number of answers to wait for, a carriage return. What
 * this does not recognise is judged by {@link ReadRequests}. Stateless.
 */
final class CurrentDataLine {
  private static final int SHORTEST = 5;
  private static final int LONGEST = 16;

  private CurrentDataLine() {}

  /** Whether the bytes are exactly one such line. */
  static boolean isOne(byte[] line) {
    int last = line.length - 1;
    if (line.length < SHORTEST || line.length > LONGEST || line[last] != '\r') {
      return false;
    }
    if (line[0] != '0' || line[1] != '1' || (last % 2 == 1 && line[last - 1] == '0')) {
      return false;
    }
    for (int i = 2; i < last; i++) {
      boolean isDigit = (line[i] >= '0' && line[i] <= '9') || (line[i] >= 'A' && line[i] <= 'F');
      if (!isDigit) {
        return false;
      }
    }
    return true;
  }
}
