package steadypull.adapter.polling;

import java.util.function.IntUnaryOperator;

/**
 * Chooses who rides along with the parameter that is most due: for every number of answer lines it
 * fills the lines with what is due next and fits, and takes the choice that brings most values for
 * the time that it costs on this link. Used by one thread.
 */
final class Packer {
  private static final int MOST_CHOICES = 64;

  /** Service byte of the answer. */
  private static final int SERVICE = 1;

  private final int most;
  private final IntUnaryOperator lines;
  private final LinkCost cost;
  private final PollItem[] due = new PollItem[MOST_CHOICES];
  private int dueCount;
  private PollItem[] pack;
  private PollItem[] best;
  private int packSize;
  private int bestSize;

  /**
   * Makes a packer.
   *
   * @param most parameters in one request
   * @param lines how many lines carry an answer of so many payload bytes
   */
  Packer(int most, IntUnaryOperator lines, LinkCost cost) {
    this.most = most;
    this.lines = lines;
    this.cost = cost;
    pack = new PollItem[most];
    best = new PollItem[most];
  }

  /** Begins with nobody to choose from. */
  void clear() {
    dueCount = 0;
  }

  /** Offers one that may ride along; kept in the order in which they are due. */
  void offer(PollItem item) {
    if (dueCount < MOST_CHOICES) {
      int at = dueCount;
      for (; at > 0 && item.isBefore(due[at - 1]); at--) {
        due[at] = due[at - 1];
      }
      due[at] = item;
      dueCount++;
    }
  }

  /** Chooses; gives how many there are, the first among them. */
  int choose(PollItem first) {
    bestSize = 0;
    double bestRate = 0;
    int fewest = lines.applyAsInt(SERVICE + bytes(first));
    int lineCount = fewest;
    boolean isFull = false;
    while (!isFull && lineCount <= fewest + most) {
      isFull = fill(first, lineCount);
      double rate = packSize / cost.of(lineCount);
      if (rate > bestRate) {
        bestRate = rate;
        takeAsBest();
      }
      lineCount++;
    }
    return bestSize;
  }

  private void takeAsBest() {
    PollItem[] former = best;
    best = pack;
    bestSize = packSize;
    pack = former;
  }

  /** Fills so many lines; whether more lines could not take anybody else. */
  private boolean fill(PollItem first, int lineCount) {
    pack[0] = first;
    packSize = 1;
    int payload = SERVICE + bytes(first);
    boolean isAnybodyLeftOut = false;
    for (int i = 0; i < dueCount && packSize < most; i++) {
      boolean fits = lines.applyAsInt(payload + bytes(due[i])) <= lineCount;
      isAnybodyLeftOut |= !fits;
      if (fits) {
        payload += bytes(due[i]);
        pack[packSize] = due[i];
        packSize++;
      }
    }
    return packSize == most || !isAnybodyLeftOut;
  }

  private static int bytes(PollItem item) {
    return 1 + item.length();
  }

  /** One of those chosen; the most due one is the first. */
  PollItem chosen(int index) {
    return best[index];
  }
}
