package steadypull.demo.pace;

import java.util.ArrayList;
import java.util.List;

/**
 * What a request costs on a serial adapter at best.
 *
 * <p>A request for n parameters with the number of answer lines has 2 + 2n hex digits, the number
 * and a carriage return. Then a CAN frame carries it, the control unit takes its time, and frames
 * come back to back: one where the payload has up to 7 bytes, else a first frame with 6 bytes, a
 * flow control from the adapter, and consecutive frames with 7 bytes each (ISO 15765-2). Every
 * frame is printed as 3 digits of identifier, 16 digits and a carriage return, filler included,
 * while the next is on the bus; after the last line come a carriage return and the prompt:
 *
 * <pre>
 *   heard(1) = (2n + 4) c + f + L + f       heard(i) = heard(1) + f + (i - 1) f  from the second on
 *   gone(i)  = max(gone(i - 1), heard(i)) + 20 c
 *   request  = gone(last) + 2 c
 * </pre>
 *
 * <p>with c the time of a character (10 bits: 8N1), L the answer time of the control unit and f the
 * time of a CAN frame. This is the best because nothing else takes time: the adapter and the
 * program think in none, the next request leaves with the prompt, no time is lost between bus and
 * line.
 *
 * @param baudRate bits per second of the serial line
 * @param answerMillis L, from the end of the request's frame to the begin of the first answer frame
 */
record LinkTiming(int baudRate, int answerMillis) {
  /**
   * f: 8 data bytes at 500 kbit/s, 111 to 135 bits with stuffing (computed from ISO 11898-1 frame
   * fields), 0.22 to 0.27 ms.
   */
  static final long FRAME_NANOS = 250_000;

  private static final int BITS_PER_CHARACTER = 10;
  private static final int LINE_CHARACTERS = 20;
  private static final int END_CHARACTERS = 2;
  private static final int MOST_IN_SINGLE = 7;

  /** The links that the bench looks at: each rate with each answer time. */
  static List<LinkTiming> all() {
    List<LinkTiming> all = new ArrayList<>();
    for (int baudRate : new int[] {38_400, 115_200, 2_000_000}) {
      for (int answerMillis : new int[] {2, 8, 25}) {
        all.add(new LinkTiming(baudRate, answerMillis));
      }
    }
    return all;
  }

  long characterNanos() {
    return 1_000_000_000L * BITS_PER_CHARACTER / baudRate;
  }

  /** Frames of an answer with so many payload bytes. */
  static int lines(int payloadBytes) {
    return payloadBytes <= MOST_IN_SINGLE ? 1 : 1 + (payloadBytes - 6 + 6) / 7;
  }

  /** From the first character sent to the prompt, for so many characters and answer lines. */
  long nanos(int requestCharacters, int lines) {
    long first = requestCharacters * characterNanos() + heardAfterNanos(1);
    long gone = first + LINE_CHARACTERS * characterNanos();
    for (int line = 2; line <= lines; line++) {
      long heard = requestCharacters * characterNanos() + heardAfterNanos(line);
      gone = Math.max(gone, heard) + LINE_CHARACTERS * characterNanos();
    }
    return gone + END_CHARACTERS * characterNanos();
  }

  /**
   * From the carriage return of the request to the end of a frame of the answer, counted from 1.
   */
  long heardAfterNanos(int frame) {
    int framesBefore = frame == 1 ? 1 : frame + 1;
    return FRAME_NANOS + answerMillis * 1_000_000L + framesBefore * FRAME_NANOS;
  }

  /** The same for a request for parameters, with the number of lines in it. */
  long nanosForParameters(int parameters, int dataBytes) {
    return nanos(2 * parameters + 4, lines(1 + parameters + dataBytes));
  }
}
