package steadypull.backtest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.channel.Channel;
import steadypull.review.ForecastScore;
import steadypull.review.ScoredDrive;
import steadypull.review.Warning;
import steadypull.vehicle.Limit;

/**
 * How well advice warned of derates in invented worlds, by the score that {@code rehearse} goes by,
 * against what the plant says came.
 */
final class AdviceScore {
  private static final int UNSCORED_SECONDS = 120;

  private final ForecastScore score = new ForecastScore();
  private final List<String> misses = new ArrayList<>();
  private final List<String> lies = new ArrayList<>();

  void add(WorldDrive drive) {
    List<Warning> said = warnings(drive);
    ScoredDrive came = came(drive);
    score.add(came, said);
    for (ScoredDrive.Derated derate : came.derates()) {
      if (derate.fromSeconds() >= UNSCORED_SECONDS) {
        noteMiss(drive, said, derate);
      }
    }
    for (Warning each : said) {
      if (each.fromSecond() >= UNSCORED_SECONDS && ForecastScore.isUntrue(came, each)) {
        lies.add(
            "world %d: %s at %d s"
                .formatted(drive.world().number(), each.channel().id(), each.fromSecond()));
      }
    }
  }

  private static ScoredDrive came(WorldDrive drive) {
    Map<Channel, Double> limits = new HashMap<>();
    for (Limit limit : drive.world().vehicle().limits().values()) {
      limits.put(limit.channel(), limit.celsius());
    }
    return new ScoredDrive(
        drive.seconds(),
        drive.derates().stream()
            .map(derate -> new ScoredDrive.Derated(derate[0], derate[1]))
            .toList(),
        drive.celsius(),
        limits);
  }

  private void noteMiss(WorldDrive drive, List<Warning> said, ScoredDrive.Derated derate) {
    double lead = ForecastScore.lead(said, derate.fromSeconds()).orElse(0);
    if (lead < 80) {
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
        .filter(limit -> drive.celsius().containsKey(limit.channel()))
        .filter(
            limit ->
                drive.celsius().getOrDefault(limit.channel(), new double[second + 1])[second]
                    > limit.celsius() - 3)
        .map(limit -> limit.channel().id())
        .toList()
        .toString();
  }

  private static List<Warning> warnings(WorldDrive drive) {
    List<Warning> advisories = new ArrayList<>();
    AdviceEvent open = null;
    for (AdviceEvent event : drive.events()) {
      boolean isAsking =
          event.level().filter(level -> level != Level.NOTICE).isPresent()
              && event.channel().isPresent();
      if (!isAsking) {
        continue;
      }
      switch (event.kind()) {
        case RAISED -> open = event.secondsToLimit().isPresent() ? event : open;
        case CLEARED -> {
          if (open != null) {
            advisories.add(advisory(open, (int) (event.timeMicros() / 1_000_000)));
          }
          open = null;
        }
        case ESCALATED,
            EASED,
            ACKNOWLEDGED,
            SHELVED,
            UNSHELVED,
            DERATE_BEGAN,
            DERATE_ENDED,
            POWER_LIMITED -> {}
      }
    }
    if (open != null) {
      advisories.add(advisory(open, drive.seconds() + 1));
    }
    return advisories;
  }

  private static Warning advisory(AdviceEvent raised, int until) {
    return new Warning(
        raised.channel().orElseThrow(),
        raised.limit().orElseThrow(),
        (int) (raised.timeMicros() / 1_000_000),
        until);
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
