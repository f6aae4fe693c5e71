package steadypull.adapter.position;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a stream of bytes into sentences, however the bytes arrive. A sentence begins with a dollar
 * sign, wherever that stands, and ends with the line. What is no sentence is dropped. One thread.
 */
final class SentenceLines {
  /** NMEA 0183 has 82 characters with both line ends; precise receivers write some more. */
  private static final int LONGEST = 110;

  private final StringBuilder line = new StringBuilder();
  private boolean isOpen;

  /** Takes bytes as they come; gives the sentences that they complete, without line ends. */
  List<String> accept(byte[] bytes) {
    List<String> complete = new ArrayList<>();
    for (byte one : bytes) {
      if (one == '$') {
        begin();
      } else if (one == '\r' || one == '\n') {
        end(complete);
      } else if (isOpen) {
        append(one);
      }
    }
    return complete;
  }

  private void begin() {
    line.setLength(0);
    line.append('$');
    isOpen = true;
  }

  private void append(byte one) {
    isOpen = one >= ' ' && one <= '~' && line.length() < LONGEST;
    line.append((char) one);
  }

  private void end(List<String> complete) {
    if (isOpen) {
      complete.add(line.toString());
    }
    isOpen = false;
  }
}
