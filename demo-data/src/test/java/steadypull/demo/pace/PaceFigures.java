package steadypull.demo.pace;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a run brought.
 *
 * @param seconds span on the link's clock
 * @param answers how often each parameter was answered, by number
 * @param readings values handed over
 * @param requests requests for parameters
 * @param processorSeconds processor time of the reader's thread
 * @param bytes allocated by the reader's thread
 */
record PaceFigures(
    LinkTiming timing,
    double seconds,
    List<Integer> answers,
    long readings,
    long requests,
    double processorSeconds,
    long bytes) {
  private static final TimedVehicle VEHICLE = new TimedVehicle();
  private static final int FIRST_PARAMETER = 1;

  PaceFigures {
    answers = List.copyOf(answers);
  }

  double valuesPerSecond() {
    return readings / seconds;
  }

  double processorPercent() {
    return 100 * processorSeconds / seconds;
  }

  double bytesPerValue() {
    return (double) bytes / readings;
  }

  /** How often a class of parameters was answered, each per second, on average. */
  double rate(List<Integer> parameters) {
    return parameters.stream().mapToInt(answers::get).average().orElse(0) / seconds;
  }

  /** How often the least asked of a class was answered per second. */
  double leastRate(List<Integer> parameters) {
    return parameters.stream().mapToInt(answers::get).min().orElse(0) / seconds;
  }

  /** The least time for these answers as a share of the time taken, 0 to 1. */
  double shareOfBest() {
    Map<String, List<Integer>> alike = new TreeMap<>();
    for (int number = FIRST_PARAMETER; number < answers.size(); number++) {
      if (answers.get(number) > 0) {
        String kind = TimedVehicle.classOf(number) + VEHICLE.data(number).length;
        alike.computeIfAbsent(kind, k -> new ArrayList<>()).add(number);
      }
    }
    return new BestPace(timing, alike.values().stream().map(this::kind).toList()).leastNanos()
        / (seconds * 1e9);
  }

  private BestPace.Kind kind(List<Integer> numbers) {
    int answered = numbers.stream().mapToInt(answers::get).sum();
    return new BestPace.Kind(VEHICLE.data(numbers.getFirst()).length, numbers.size(), answered);
  }
}
