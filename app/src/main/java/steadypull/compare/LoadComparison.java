package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Which of some runs pulled alike: over the same seconds from their onsets, near enough to the load
 * on which most of them can be compared. Immutable.
 *
 * @param runs in their order
 * @param windowSeconds over which the loads are taken; of a shorter run, all of it
 * @param kilowatts the load that is compared
 * @param words of the reader
 */
record LoadComparison(List<FoundRun> runs, int windowSeconds, double kilowatts, RunWords words) {
  /** What lasts shows within a minute of full load; few derates come sooner (our choice). */
  private static final int WINDOW_SECONDS = 60;

  /** A mismatch of less lies within the error of the engine's own torque (common practice: 2 %). */
  private static final double WORTH_TELLING_PERCENT = 2;

  static LoadComparison of(List<FoundRun> runs, RunWords words) {
    return new LoadComparison(runs, WINDOW_SECONDS, LoadLevel.best(runs, WINDOW_SECONDS), words);
  }

  private boolean isAlike(FoundRun found) {
    return LoadLevel.isAlike(found.kilowatts(windowSeconds), kilowatts);
  }

  /** Those that pulled alike; the others are rejected, and a side that never did is told. */
  List<FoundRun> alike(List<RejectedRun> rejected, List<String> caveats) {
    List<FoundRun> alike = new ArrayList<>();
    for (FoundRun found : runs) {
      if (isAlike(found)) {
        alike.add(found);
      } else {
        rejected.add(RunFinding.rejected(found.run(), reason(found)));
      }
    }
    for (Side side : Side.values()) {
      List<FoundRun> ofSide = runs.stream().filter(found -> found.run().side() == side).toList();
      if (!ofSide.isEmpty() && ofSide.stream().noneMatch(this::isAlike)) {
        caveats.add(never(side, ofSide));
      }
    }
    return alike;
  }

  private String reason(FoundRun found) {
    double own = found.kilowatts(windowSeconds);
    return words.say(
        "load.apart",
        words.power(own),
        windowSeconds,
        words.power(kilowatts),
        words.number(100 * Math.abs(own - kilowatts) / kilowatts, 0),
        words.number(100 * LoadLevel.MOST_SHARE, 0));
  }

  /** "The after runs never held 380 N.m for 60 s: the nearest was 310 N.m." */
  private String never(Side side, List<FoundRun> ofSide) {
    OptionalDouble wished = newtonMetres(alikeOrOthers(side));
    OptionalDouble had = newtonMetres(ofSide);
    boolean isUnder = ofSide.stream().allMatch(found -> found.kilowatts(windowSeconds) < kilowatts);
    String key = (isUnder ? "load.never." : "load.other.") + side.name();
    return wished.isPresent() && had.isPresent()
        ? words.say(key, torque(wished.getAsDouble()), windowSeconds, torque(had.getAsDouble()))
        : words.say(
            key,
            words.power(kilowatts),
            windowSeconds,
            words.power(nearest(ofSide).kilowatts(windowSeconds)));
  }

  private String torque(double newtonMetres) {
    return words.number(newtonMetres, 0) + " N.m";
  }

  private List<FoundRun> alikeOrOthers(Side side) {
    return runs.stream().filter(found -> found.run().side() != side && isAlike(found)).toList();
  }

  private OptionalDouble newtonMetres(List<FoundRun> some) {
    return some.isEmpty() ? OptionalDouble.empty() : nearest(some).newtonMetres(windowSeconds);
  }

  private FoundRun nearest(List<FoundRun> some) {
    return some.stream()
        .min(
            (one, other) ->
                Double.compare(
                    Math.abs(one.kilowatts(windowSeconds) - kilowatts),
                    Math.abs(other.kilowatts(windowSeconds) - kilowatts)))
        .orElseThrow();
  }

  /** Says a mismatch between the sides that is left. */
  List<String> mismatch(LoadMatch match) {
    return Math.abs(match.mismatchPercent()) < WORTH_TELLING_PERCENT
        ? List.of()
        : List.of(
            words.say(
                match.mismatchKilowatts() > 0 ? "load.mismatch.more" : "load.mismatch.less",
                words.number(Math.abs(match.mismatchKilowatts()), 1) + " kW",
                words.number(Math.abs(match.mismatchPercent()), 1),
                match.windowSeconds()));
  }
}
