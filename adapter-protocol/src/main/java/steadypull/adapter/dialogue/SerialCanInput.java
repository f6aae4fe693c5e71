package steadypull.adapter.dialogue;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts what a serial CAN adapter sends into lines, however the bytes arrive. A return ends a line;
 * a bell is a line of its own and spoils what stands before it. Used by one thread.
 */
public final class SerialCanInput {
  private static final int BELL = 7;
  private static final int RETURN = '\r';

  /** Longer than any line of the protocol: a long frame with its time stamp has 30 characters. */
  private static final int LONGEST_LINE = 64;

  private final StringBuilder begun = new StringBuilder();

  /** Takes bytes as they arrive; gives the lines that they complete, in order. */
  public List<SerialCanLine> accept(byte[] bytes) {
    List<SerialCanLine> lines = new ArrayList<>();
    for (byte one : bytes) {
      if (one == RETURN) {
        lines.add(SerialCanLine.parse(taken()));
      } else if (one == BELL) {
        noteSpoilt(lines);
        lines.add(new SerialCanLine.Refused());
      } else if (begun.length() <= LONGEST_LINE) {
        begun.append(one > 0 ? (char) one : '\uFFFD');
      }
    }
    return lines;
  }

  private void noteSpoilt(List<SerialCanLine> lines) {
    String before = taken();
    if (!before.isEmpty()) {
      lines.add(new SerialCanLine.Unreadable(before));
    }
  }

  private String taken() {
    String line = begun.toString();
    begun.setLength(0);
    return line;
  }

  /** Forgets a line that has begun. */
  public void clear() {
    begun.setLength(0);
  }
}
