package steadypull.backtest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.advice.RuleSet;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.drive.WarningLog;
import steadypull.review.ForecastScore;
import steadypull.review.ScoredDrive;
import steadypull.review.Warning;
import steadypull.vehicle.Limit;

/**
 * How well advice warned of derates in invented worlds, by the score that {@code rehearse} goes by,
 * against what the plant says came.
 */
final class AdviceScore {
  static final Set<Channel> SLOW =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final RuleSet RULES = RuleSet.shipped();
  private static final int UNSCORED_SECONDS = 120;

  /** Derates with less lead than this are listed. */
  private static final double SHORT_LEAD_SECONDS = 80;

  private final ForecastScore score = new ForecastScore();
  private final List<String> misses = new ArrayList<>();
  private final List<String> lies = new ArrayList<>();

  /** Counts what the rules said of a drive. */
  void add(WorldDrive drive) {
    WarningLog log = new WarningLog(RULES);
    drive.events().forEach(log::accept);
    add(drive, log.upTo(drive.seconds()));
  }

  /** Counts what somebody said of a drive. */
  void add(WorldDrive drive, List<Warning> said) {
    ScoredDrive came = came(drive);
    score.add(came, said);
    came.derates().stream()
        .filter(derate -> derate.fromSeconds() >= UNSCORED_SECONDS)
        .forEach(derate -> noteMiss(drive, said, derate));
    said.stream()
        .filter(each -> each.fromSecond() >= UNSCORED_SECONDS)
        .filter(each -> ForecastScore.isUntrue(came, each))
        .map(
            each ->
                "world %d: %s at %d s"
                    .formatted(drive.world().number(), each.channel().id(), each.fromSecond()))
        .forEach(lies::add);
  }

  /** What came on a drive. */
  static ScoredDrive came(WorldDrive drive) {
    Map<Channel, Double> limits = new HashMap<>();
    Map<Channel, double[]> celsius = new HashMap<>();
    for (Limit limit : drive.world().vehicle().limits().values()) {
      limits.put(limit.channel(), limit.celsius());
      double[] said = new double[drive.seconds() + 1];
      for (int second = 0; second < said.length; second++) {
        said[second] = drive.celsius(limit.channel(), second);
      }
      celsius.put(limit.channel(), said);
    }
    List<ScoredDrive.Derated> derates =
        drive.derates().stream()
            .map(derate -> new ScoredDrive.Derated(derate[0], derate[1]))
            .toList();
    return new ScoredDrive(drive.seconds(), derates, celsius, limits);
  }

  private void noteMiss(WorldDrive drive, List<Warning> said, ScoredDrive.Derated derate) {
    double lead = ForecastScore.lead(said, derate.fromSeconds()).orElse(0);
    if (lead < SHORT_LEAD_SECONDS) {
      misses.add(
          "world %d: derate at %.0f to %.0f s, lead %.0f s, %s"
              .formatted(
                  drive.world().number(),
                  derate.fromSeconds(),
                  derate.untilSeconds(),
                  lead,
                  hot(drive, (int) derate.fromSeconds())));
    }
  }

  /** The channels at their limits at a second. */
  private static String hot(WorldDrive drive, int second) {
    return drive.world().vehicle().limits().values().stream()
        .filter(limit -> drive.celsius(limit.channel(), second) > limit.celsius() - 3)
        .map(limit -> limit.channel().id())
        .toList()
        .toString();
  }

  int derates() {
    return score.derates();
  }

  int warned() {
    return score.warned();
  }

  double falsePerHour() {
    return score.falsePerHour().orElse(0);
  }

  /** A quantile of the leads, s; 0 without any. */
  double lead(double level) {
    return score.leadSeconds(level).orElse(0);
  }

  List<String> misses() {
    return misses;
  }

  List<String> lies() {
    return lies;
  }

  @Override
  public String toString() {
    return "%.1f h, warned %d of %d, lead p10 %.0f s, median %.0f s, %d advisories, false %.2f an hour"
        .formatted(
            score.hours(),
            warned(),
            derates(),
            lead(0.1),
            lead(0.5),
            score.advisories(),
            falsePerHour());
  }
}
