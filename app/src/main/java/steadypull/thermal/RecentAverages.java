package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * A channel's last minutes as averages over a few seconds each: readings come in steps of 1 degC,
 * and a slope between two of them is a step or nothing. Pipeline thread only.
 */
final class RecentAverages {
  private static final double BLOCK_SECONDS = 5;
  private static final double MEMORY_SECONDS = 240;

  /** Across a longer silence nothing is known of what happened. */
  private static final double LONGEST_GAP_SECONDS = 30;

  /** An average of one reading counts for less than one of five, but not five times less. */
  private static final double ALONE_DEVIATION = 1.5;

  private static final class Block {
    private final double beginsSeconds;
    private double seconds;
    private double celsius;
    private int count;

    Block(double beginsSeconds) {
      this.beginsSeconds = beginsSeconds;
    }

    void add(double atSeconds, double reading) {
      count++;
      seconds += (atSeconds - seconds) / count;
      celsius += (reading - celsius) / count;
    }
  }

  private final Deque<Block> blocks = new ArrayDeque<>();
  private double lastSeconds = Double.NEGATIVE_INFINITY;

  /** Takes a reading; times do not run backwards. */
  void accept(double seconds, double celsius) {
    if (seconds - lastSeconds > LONGEST_GAP_SECONDS) {
      blocks.clear();
    }
    lastSeconds = seconds;
    double begins = Math.floor(seconds / BLOCK_SECONDS) * BLOCK_SECONDS;
    if (blocks.isEmpty() || blocks.getLast().beginsSeconds < begins) {
      blocks.addLast(new Block(begins));
    }
    blocks.getLast().add(seconds, celsius);
    forgetBefore(seconds - MEMORY_SECONDS);
  }

  /** Forgets what lies before a moment; the last average stays. */
  void forgetBefore(double seconds) {
    while (blocks.size() > 1 && blocks.getFirst().seconds < seconds) {
      blocks.removeFirst();
    }
  }

  /** From the first to the last average, seconds; 0 if there are none. */
  double spanSeconds() {
    return blocks.isEmpty() ? 0 : lastSeconds - blocks.getFirst().seconds;
  }

  /**
   * The averages, oldest first, by seconds from now (0 or less).
   *
   * @param deviation standard deviation of a full average
   */
  List<CurveFit.Point> points(double nowSeconds, double deviation) {
    List<CurveFit.Point> points = new ArrayList<>(blocks.size());
    for (Block block : blocks) {
      double alone = block.count == 1 ? ALONE_DEVIATION : 1;
      points.add(new CurveFit.Point(block.seconds - nowSeconds, block.celsius, deviation * alone));
    }
    return points;
  }
}
