package steadypull.backtest;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import steadypull.review.PlainForecaster;

/** Scores of several forecasters over the same drives, as a table. */
final class ForecastTable {
  /** Other rules than the shipped ones, to see what a probability costs and brings. */
  private static final List<ProbabilityWatch> OTHERS =
      List.of(
          new ProbabilityWatch(0.4, 0.8, 0.6),
          new ProbabilityWatch(0.5, 0.6, 0.6),
          new ProbabilityWatch(0.5, 0.7, 0.6),
          new ProbabilityWatch(0.5, 0.8, 0.6),
          new ProbabilityWatch(0.5, 0.8, 0.3),
          new ProbabilityWatch(0.5, 0.9, 0.6),
          new ProbabilityWatch(0.6, 0.8, 0.6),
          new ProbabilityWatch(0.6, 0.8, 0.3),
          new ProbabilityWatch(0.6, 0.9, 0.6),
          new ProbabilityWatch(0.7, 0.8, 0.6),
          new ProbabilityWatch(0.7, 0.9, 0.6),
          new ProbabilityWatch(0.8, 0.8, 0.6),
          new ProbabilityWatch(0.8, 0.8, 0.3),
          new ProbabilityWatch(0.9, 0.9, 0.6));

  private final Map<PlainForecaster, AdviceScore> plain = new EnumMap<>(PlainForecaster.class);
  private final Map<WorldDrive.Road, AdviceScore> ours = new EnumMap<>(WorldDrive.Road.class);
  private final Map<WorldDrive.Road, Map<ProbabilityWatch, AdviceScore>> curves =
      new EnumMap<>(WorldDrive.Road.class);
  private final Map<WorldDrive.Road, Double> micros = new EnumMap<>(WorldDrive.Road.class);
  private int worlds;

  /** Drives through a world with the road unknown and known. */
  void drive(TowingWorld world) {
    worlds++;
    for (WorldDrive.Road road : WorldDrive.Road.values()) {
      WorldDrive drive = WorldDrive.of(world, road);
      ours.computeIfAbsent(road, _ -> new AdviceScore()).add(drive);
      micros.merge(road, drive.microsPerSecond(), Double::sum);
      for (ProbabilityWatch other : OTHERS) {
        curves
            .computeIfAbsent(road, _ -> new LinkedHashMap<>())
            .computeIfAbsent(other, _ -> new AdviceScore())
            .add(drive, other.raised(drive));
      }
      if (road == WorldDrive.Road.UNKNOWN) {
        for (PlainForecaster watch : PlainForecaster.values()) {
          plain
              .computeIfAbsent(watch, _ -> new AdviceScore())
              .add(drive, watch.warnings(AdviceScore.came(drive)));
        }
      }
    }
  }

  AdviceScore ours(WorldDrive.Road road) {
    return ours.getOrDefault(road, new AdviceScore());
  }

  AdviceScore plain(PlainForecaster watch) {
    return plain.getOrDefault(watch, new AdviceScore());
  }

  /** Processor time of the whole pipeline a second driven. */
  double microsPerSecond(WorldDrive.Road road) {
    return micros.getOrDefault(road, 0.0) / worlds;
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    plain.forEach((watch, score) -> line(text, watch.toString(), score));
    ours.forEach((road, score) -> line(text, "ours, road " + road, score));
    curves.forEach(
        (road, curve) ->
            curve.forEach((other, score) -> line(text, "road " + road + ", " + other, score)));
    ours.forEach(
        (road, score) -> {
          text.append("%s: %.0f us a second%n".formatted(road, microsPerSecond(road)));
          score.misses().forEach(each -> text.append("%s late: %s%n".formatted(road, each)));
          score.lies().forEach(each -> text.append("%s false: %s%n".formatted(road, each)));
        });
    return text.toString();
  }

  private static void line(StringBuilder text, String who, AdviceScore score) {
    text.append(
        String.format(
            Locale.ROOT,
            "| %s | %d / %d | %.0f s / %.0f s | %.2f |%n",
            who.toLowerCase(Locale.ROOT).replace('_', ' '),
            score.warned(),
            score.derates(),
            score.lead(0.1),
            score.lead(0.5),
            score.falsePerHour()));
  }
}
