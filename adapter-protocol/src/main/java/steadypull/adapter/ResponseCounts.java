package steadypull.adapter;

import java.time.Duration;
import java.util.Arrays;
import java.util.OptionalLong;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.MessageBuffer;

/**
 * Whether this adapter can be told after how many lines a reply is complete, so that it need not
 * wait for more. The first request with a count is the test; some adapters do not know the count,
 * others understand it otherwise and cut answers short. What does not work is left off at once;
 * what worked before is tried again soon, for damage on the way looks alike. From time to time a
 * request goes out without a count, in case somebody else answers meanwhile. Reader thread only.
 */
final class ResponseCounts {
  /** One hex digit. */
  private static final int MOST_LINES = 15;

  private static final int STRIKES = 2;
  private static final long RECHECK_NANOS = Duration.ofMinutes(1).toNanos();

  /** Estimated: longer than most disturbances, and one request repeated in vain costs little. */
  private static final long RETRY_NANOS = Duration.ofSeconds(20).toNanos();

  private static final int NEGATIVE = 0x7F;
  private static final int PENDING = 0x78;

  private final int[] strikes = new int[MOST_LINES + 1];
  private final boolean[] hasWorked = new boolean[MOST_LINES + 1];
  private final OptionalLong[] retryNanoTimes = new OptionalLong[MOST_LINES + 1];
  private boolean isProven;
  private boolean isRefused;
  private boolean isRechecking;
  private long lastRecheckNanoTime;

  ResponseCounts(long nowNanoTime) {
    lastRecheckNanoTime = nowNanoTime;
    Arrays.fill(retryNanoTimes, OptionalLong.empty());
  }

  /** The count to send with a request whose answer has so many lines; 0 to send none. */
  int countFor(int lines, long nowNanoTime) {
    if (isRefused || lines > MOST_LINES || isLeftOff(lines, nowNanoTime)) {
      return 0;
    }
    isRechecking = nowNanoTime - lastRecheckNanoTime >= RECHECK_NANOS;
    if (isRechecking) {
      lastRecheckNanoTime = nowNanoTime;
    }
    return isRechecking ? 0 : lines;
  }

  private boolean isLeftOff(int lines, long nowNanoTime) {
    if (strikes[lines] < STRIKES) {
      return false;
    }
    if (retryNanoTimes[lines].isEmpty()) {
      retryNanoTimes[lines] = OptionalLong.of(nowNanoTime + RETRY_NANOS);
    }
    boolean isDue = hasWorked[lines] && nowNanoTime - retryNanoTimes[lines].getAsLong() >= 0;
    if (isDue) {
      strikes[lines] = STRIKES - 1;
      retryNanoTimes[lines] = OptionalLong.empty();
    }
    return !isDue;
  }

  /** Takes the reply to a request for one answer that went out without a count. */
  void noteUncounted(MessageBuffer messages) {
    boolean isStrangerThere = isRechecking && answers(messages) > 1;
    isRechecking = false;
    isRefused |= isStrangerThere;
  }

  /**
   * Takes the reply to a request that went out with a count.
   *
   * @return whether it is to be believed; if not, the request should be repeated without a count
   */
  boolean isBelievable(int count, Reply reply, MessageBuffer messages) {
    boolean isWhole = reply instanceof Reply.Data && hasAnswer(messages);
    boolean isCut = reply instanceof Reply.Data && !isWhole;
    boolean isDoubtful = isCut || (reply instanceof Reply.NoData && !isProven);
    if (reply instanceof Reply.NotUnderstood) {
      isRefused = true;
      return false;
    }
    isProven |= isWhole;
    hasWorked[count] |= isWhole;
    strikes[count] = isWhole ? 0 : strikes[count] + (isDoubtful ? 1 : 0);
    return !isDoubtful;
  }

  private static boolean hasAnswer(MessageBuffer messages) {
    return answers(messages) > 0;
  }

  /** How many whole messages there are that do not only promise the answer for later. */
  private static int answers(MessageBuffer messages) {
    int answers = 0;
    for (int i = 0; i < messages.count(); i++) {
      boolean isPending =
          messages.size(i) == 3 && messages.at(i, 0) == NEGATIVE && messages.at(i, 2) == PENDING;
      answers += isPending ? 0 : 1;
    }
    return answers;
  }
}
