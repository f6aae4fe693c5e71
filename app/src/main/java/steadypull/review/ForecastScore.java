package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * How well somebody warned of derates over many drives. A warning counts for a derate if it stood
 * from at least 5 s before the derate began until then. It was false if its channel did not come
 * within 2 K of its limit in the 180 s after it was raised, 600 s for engine coolant, engine oil
 * and gearbox; if the drive ends before, nobody knows. What happens in the first two minutes of a
 * drive does not count. One thread.
 */
public final class ForecastScore {
  private static final Set<Channel> SLOW =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final int UNSCORED_SECONDS = 120;
  private static final int LEAST_LEAD_SECONDS = 5;
  private static final double NEAR_KELVIN = 2;
  private static final int TRUE_WITHIN_SECONDS = 180;
  private static final int SLOW_TRUE_WITHIN_SECONDS = 600;

  private final List<Double> leads = new ArrayList<>();
  private int derates;
  private int advisories;
  private int untrue;
  private double hours;

  /** Counts what somebody said of a drive. */
  public void add(ScoredDrive drive, List<Warning> said) {
    drive.derates().stream()
        .filter(derate -> derate.fromSeconds() >= UNSCORED_SECONDS)
        .forEach(derate -> count(said, derate.fromSeconds()));
    said.stream()
        .filter(warning -> warning.fromSecond() >= UNSCORED_SECONDS)
        .forEach(
            warning -> {
              advisories++;
              untrue += isUntrue(drive, warning) ? 1 : 0;
            });
    hours += Math.max(0, drive.seconds() - UNSCORED_SECONDS) / 3600.0;
  }

  private void count(List<Warning> said, double begin) {
    derates++;
    lead(said, begin).ifPresent(leads::add);
  }

  /**
   * How long before a derate the first of the warnings was raised that then still stood, s; empty
   * if none was raised in time.
   */
  public static OptionalDouble lead(List<Warning> said, double derateBeginsSeconds) {
    return said.stream()
        .filter(each -> each.fromSecond() <= derateBeginsSeconds - LEAST_LEAD_SECONDS)
        .filter(each -> each.untilSecond() >= derateBeginsSeconds)
        .mapToDouble(each -> derateBeginsSeconds - each.fromSecond())
        .max();
  }

  /** Whether a warning's channel did not come near its limit in the time that the drive gave it. */
  public static boolean isUntrue(ScoredDrive drive, Warning warning) {
    int within = SLOW.contains(warning.channel()) ? SLOW_TRUE_WITHIN_SECONDS : TRUE_WITHIN_SECONDS;
    int from = warning.fromSecond();
    return from + within <= drive.seconds()
        && drive.nearestKelvin(warning.channel(), warning.limitCelsius(), from, from + within)
            > NEAR_KELVIN;
  }

  /** How many derates there were. */
  public int derates() {
    return derates;
  }

  /** How many of them were warned of. */
  public int warned() {
    return leads.size();
  }

  /** How many warnings there were. */
  public int advisories() {
    return advisories;
  }

  /** Hours of driving that count. */
  public double hours() {
    return hours;
  }

  /** False warnings in an hour; empty where no driving counts. */
  public OptionalDouble falsePerHour() {
    return hours > 0 ? OptionalDouble.of(untrue / hours) : OptionalDouble.empty();
  }

  /**
   * A quantile of the leads, s; the lower neighbour where it falls between two, empty without any.
   *
   * @param level 0 to 1
   */
  public OptionalDouble leadSeconds(double level) {
    List<Double> sorted = leads.stream().sorted().toList();
    return sorted.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(sorted.get((int) (level * (sorted.size() - 1))));
  }
}
