package steadypull.demo.pace;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;

/**
 * The least time in which given answers could have come over a link: how often to send which
 * mixture of parameters, a linear programme over all mixtures of up to six.
 *
 * <pre>
 *   least  sum over mixtures m of  x(m) * time(m)
 *   with   sum over mixtures m of  x(m) * (parameters of kind k in m)  >=  answers of kind k
 * </pre>
 *
 * <p>Parameters of one kind are of one class and have equally long data; they are interchangeable,
 * and the x need not be whole: both can only make it less than what any real order of requests
 * needs. So the share of this time in the time that was taken never flatters.
 */
final class BestPace {
  private static final int MOST = 6;

  /**
   * Parameters that are alike.
   *
   * @param bytes data bytes of each
   * @param parameters how many there are
   * @param answers how many answers came of all together
   */
  record Kind(int bytes, int parameters, int answers) {}

  private final LinkTiming timing;
  private final List<Kind> kinds;
  private final List<int[]> mixtures = new ArrayList<>();

  /** Prepares the programme. */
  BestPace(LinkTiming timing, List<Kind> kinds) {
    this.timing = timing;
    this.kinds = List.copyOf(kinds);
    mix(new int[kinds.size()], 0, MOST);
  }

  private void mix(int[] chosen, int at, int left) {
    if (at == kinds.size()) {
      if (left < MOST) {
        mixtures.add(chosen.clone());
      }
      return;
    }
    for (int count = 0; count <= Math.min(kinds.get(at).parameters(), left); count++) {
      chosen[at] = count;
      mix(chosen, at + 1, left - count);
    }
    chosen[at] = 0;
  }

  /** The least time, nanoseconds. */
  double leastNanos() {
    double[] costs = mixtures.stream().mapToDouble(this::nanos).toArray();
    List<LinearConstraint> constraints = new ArrayList<>();
    for (int i = 0; i < kinds.size(); i++) {
      int at = i;
      double[] counts = mixtures.stream().mapToDouble(mixture -> mixture[at]).toArray();
      constraints.add(new LinearConstraint(counts, Relationship.GEQ, kinds.get(i).answers()));
    }
    PointValuePair best =
        new SimplexSolver()
            .optimize(
                new LinearObjectiveFunction(costs, 0),
                new LinearConstraintSet(constraints),
                new NonNegativeConstraint(true));
    return best.getValue();
  }

  private double nanos(int[] mixture) {
    int parameters = 0;
    int bytes = 0;
    for (int i = 0; i < mixture.length; i++) {
      parameters += mixture[i];
      bytes += mixture[i] * kinds.get(i).bytes();
    }
    return timing.nanosForParameters(parameters, bytes);
  }
}
