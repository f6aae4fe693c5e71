package steadypull.adapter.frame;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads replies of adapters that do not show who answers. A short answer is one line of payload. A
 * long one on CAN is a line of three hex digits, its length in bytes, and lines that begin with one
 * hex digit, counting from 0, and a colon; the last may carry filler. All messages are written down
 * to one control unit. Where parts are missing, too many or in disorder, answers of several control
 * units may be mixed: then nothing is read. Stateless.
 */
public final class BareLines {
  private static final Pattern LENGTH = Pattern.compile("[0-9A-F]{3}");
  private static final Pattern PART = Pattern.compile("([0-9A-F]):(([0-9A-F]{2})+)");
  private static final Pattern SHORT = Pattern.compile("([0-9A-F]{2}){1,7}");

  private BareLines() {}

  /**
   * Reads one reply.
   *
   * @param lines lines of hex digits and colons, blanks removed
   * @param controlUnit who is taken to have answered
   * @param messages takes what was sound
   */
  public static void read(List<String> lines, String controlUnit, MessageBuffer messages) {
    Optional<LongAnswer> open = Optional.empty();
    for (String line : lines) {
      String text = line.toUpperCase(Locale.ROOT);
      Matcher part = PART.matcher(text);
      if (LENGTH.matcher(text).matches()) {
        if (open.isPresent()) {
          messages.clear();
          return;
        }
        open = Optional.of(new LongAnswer(Integer.parseInt(text, 16)));
      } else if (part.matches()) {
        if (open.isEmpty() || !open.get().isNext(part)) {
          messages.clear();
          return;
        }
        if (open.get().isComplete()) {
          messages.add(new Message(controlUnit, open.get().payload()));
          open = Optional.empty();
        }
      } else if (SHORT.matcher(text).matches()) {
        messages.add(new Message(controlUnit, Payload.ofHex(text)));
      }
    }
  }

  /** A message whose length was announced. */
  private static final class LongAnswer {
    private final int length;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private int expected;

    LongAnswer(int length) {
      this.length = length;
    }

    /** Takes a part; false if it is not the next one, or comes after the end. */
    boolean isNext(Matcher part) {
      if (Character.digit(part.group(1).charAt(0), 16) != expected || isComplete()) {
        return false;
      }
      expected = (expected + 1) % 16;
      byte[] more = Payload.ofHex(part.group(2)).toBytes();
      bytes.write(more, 0, Math.min(more.length, length - bytes.size()));
      return true;
    }

    boolean isComplete() {
      return bytes.size() == length;
    }

    Payload payload() {
      return Payload.of(bytes.toByteArray());
    }
  }
}
