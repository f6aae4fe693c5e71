package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Loses consecutive frames or gives them wrong numbers while that is asked for. */
final class FrameFaults {
  private final BenchSettings settings;
  private final Random which;

  FrameFaults(BenchSettings settings) {
    this.settings = settings;
    which = new Random(settings.seed() ^ 0xF4A3L);
  }

  /** What is left of the consecutive frames of one answer. */
  List<CanFrame> on(List<CanFrame> frames, double seconds) {
    List<CanFrame> left = new ArrayList<>(frames);
    if (!left.isEmpty() && settings.has(Fault.Kind.MISSING_FRAME, seconds)) {
      left.remove(which.nextInt(left.size()));
    }
    if (!left.isEmpty() && settings.has(Fault.Kind.WRONG_SEQUENCE, seconds)) {
      // The lowest bits of the first byte are the number.
      int at = which.nextInt(left.size());
      left.set(at, left.get(at).damaged(0, which.nextInt(3)));
    }
    return left;
  }
}
