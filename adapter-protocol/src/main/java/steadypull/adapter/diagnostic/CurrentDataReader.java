package steadypull.adapter.diagnostic;

import java.util.List;
import steadypull.adapter.frame.Octets;

/**
 * Takes messages apart that answer a request for parameters (service 01), where they stand: a whole
 * message is judged before anything in it may be used. Serves message after message without
 * allocating. Used by one thread.
 */
public final class CurrentDataReader {
  private static final int POSITIVE = 0x41;
  private static final int NEGATIVE = 0x7F;
  private static final int SERVICE = 0x01;
  private static final int UNKNOWN = 0;

  /** What a message says to the request. */
  public enum Kind {
    /** Data of some or all parameters asked for, and nothing else. */
    DATA,
    /** The control unit said no, or not yet; {@link #code} tells why. */
    REFUSED,
    /** A sound message that answers something else, such as an earlier request. */
    STRAY,
    /**
     * A message that cannot be taken apart: a length differs from what was learnt, or a parameter
     * stands there that nobody asked for. Nothing in it can be trusted.
     */
    MISFIT
  }

  private final int[] numbers = new int[Requests.MOST_PARAMETERS];
  private final int[] positions = new int[Requests.MOST_PARAMETERS];
  private final int[] starts = new int[Requests.MOST_PARAMETERS];
  private final int[] ends = new int[Requests.MOST_PARAMETERS];
  private int count;
  private NegativeCode code = NegativeCode.GENERAL;

  /**
   * Reads a message. The answer to one parameter is as long as it comes; several may come in any
   * order, and some may be missing.
   *
   * @param asked one to six numbers
   * @param lengths data bytes of every parameter from 0 to 0xFF as learnt from this control unit; 0
   *     where nothing was learnt
   * @param message a whole message of one control unit
   */
  public Kind read(List<Integer> asked, int[] lengths, Octets message) {
    count = 0;
    if (message.size() == 0 || message.at(0) != POSITIVE) {
      return other(message);
    }
    if (asked.size() > 1) {
      return isTakenApart(lengths, message) ? judged(asked) : Kind.MISFIT;
    }
    boolean isAnswer = message.size() > 2 && message.at(1) == asked.getFirst();
    if (isAnswer) {
      keep(message.at(1), 2, message.size());
    }
    return isAnswer ? Kind.DATA : Kind.STRAY;
  }

  private Kind other(Octets message) {
    boolean isRefusal =
        message.size() == 3 && message.at(0) == NEGATIVE && message.at(1) == SERVICE;
    if (isRefusal) {
      code = NegativeCode.of(message.at(2));
    }
    return isRefusal ? Kind.REFUSED : Kind.STRAY;
  }

  private boolean isTakenApart(int[] lengths, Octets message) {
    int at = 1;
    while (at < message.size()) {
      int number = message.at(at);
      int end = at + 1 + lengths[number];
      boolean fits = lengths[number] != UNKNOWN && end <= message.size();
      if (!fits || count == Requests.MOST_PARAMETERS || isKept(number)) {
        return false;
      }
      keep(number, at + 1, end);
      at = end;
    }
    return count > 0;
  }

  private boolean isKept(int number) {
    for (int i = 0; i < count; i++) {
      if (numbers[i] == number) {
        return true;
      }
    }
    return false;
  }

  private void keep(int number, int start, int end) {
    numbers[count] = number;
    positions[count] = 0;
    starts[count] = start;
    ends[count] = end;
    count++;
  }

  /** All asked for: an answer. None: a late answer to something else. Mixed: not to be trusted. */
  private Kind judged(List<Integer> asked) {
    int askedFor = 0;
    for (int position = 0; position < asked.size(); position++) {
      int number = asked.get(position);
      for (int i = 0; i < count; i++) {
        if (numbers[i] == number) {
          positions[i] = position;
          askedFor++;
        }
      }
    }
    if (askedFor == count) {
      return Kind.DATA;
    }
    return askedFor == 0 ? Kind.STRAY : Kind.MISFIT;
  }

  /** How many parameters the last message answered; only with {@link Kind#DATA}. */
  public int count() {
    return count;
  }

  /** Number of a parameter answered. */
  public int number(int index) {
    return numbers[index];
  }

  /** Where a parameter answered stands among those asked, from 0 on. */
  public int position(int index) {
    return positions[index];
  }

  /** Where the data of a parameter begin in the message. */
  public int start(int index) {
    return starts[index];
  }

  /** Where the data of a parameter have ended. */
  public int end(int index) {
    return ends[index];
  }

  /** Why the last message refused; only with {@link Kind#REFUSED}. */
  public NegativeCode code() {
    return code;
  }
}
