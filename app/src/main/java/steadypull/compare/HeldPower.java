package steadypull.compare;

import java.util.Arrays;
import java.util.List;

/** The power that the runs of one side held over time. Stateless. */
final class HeldPower {
  private HeldPower() {}

  /** Mean of the runs in kW, with the least and the greatest as band, as long as all pulled. */
  static Course of(List<Run> runs, Side side) {
    List<Run> ones = runs.stream().filter(run -> run.side() == side).toList();
    int seconds = ones.stream().mapToInt(Run::loadSeconds).min().orElse(0);
    double[][] each =
        ones.stream().map(run -> Power.kilowatts(run, 0, seconds)).toArray(double[][]::new);
    double[] low = new double[seconds];
    double[] middle = new double[seconds];
    double[] high = new double[seconds];
    for (int second = 0; second < seconds; second++) {
      int at = second;
      double[] now = Arrays.stream(each).mapToDouble(run -> run[at]).toArray();
      low[second] = Arrays.stream(now).min().orElse(0);
      middle[second] = Arrays.stream(now).average().orElse(0);
      high[second] = Arrays.stream(now).max().orElse(0);
    }
    return new Course(low, middle, high);
  }
}
