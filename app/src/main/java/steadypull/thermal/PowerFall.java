package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.road.LatestSamples;
import steadypull.thermal.PullWindow.Pull;

/**
 * Torque that falls though no less is asked for, where demanded and delivered torque are not both
 * told. The pedal says what is asked for. Under cruise control it reads zero: then speed that falls
 * asks for more, and torque that falls with it is missing; unless it falls at once, for then
 * somebody let go. Pipeline thread only.
 */
final class PowerFall {
  /** With less of the pedal nobody asks for power. */
  private static final double ASKING_PERCENT = 60;

  /** A foot that rests on the pedal (estimated). */
  private static final double RESTING_PERCENT = 5;

  /** With less of the most torque nobody asks for power. */
  private static final double ASKING_SHARE = 0.35;

  /** A soft derate takes 2 to 4 % a kelvin (common practice), and no channel gains 4 K in 3 s. */
  private static final double LET_GO_SHARE = 0.15;

  private static final double LET_GO_WITHIN_SECONDS = 3;

  /**
   * With less of the most torque somebody has let go; a gear change leaves more, or ends sooner.
   */
  private static final double IDLING_SHARE = 0.25;

  /** A speed that falls shows in whole km/h by then (estimated). */
  private static final double SLOWING_SECONDS = 8;

  private static final double SLOWING_BY = 1;

  /** While a gear changes nothing new is known; after that nothing is known any more. */
  private static final double SHIFTING_SECONDS = 9;

  /** From here on torque counts as missing, and its beginning is kept in mind. */
  private static final double MISSING_PERCENT = 5;

  private final LatestSamples samples;
  private final PullWindow window = new PullWindow();
  private final PullMemory memory;
  private Optional<PullBasis> basis = Optional.empty();
  private Optional<Pull> reference = Optional.empty();
  private double letGoAt = Double.NEGATIVE_INFINITY;
  private Shortfall last = new Shortfall.Satisfied();
  private double lastSteadySeconds;
  private boolean isTelling;

  PowerFall(LatestSamples samples, OptionalDouble ratedRpm) {
    this.samples = samples;
    this.memory = new PullMemory(ratedRpm);
  }

  /** Whether the last moment told the pull and what is asked for. */
  boolean isTelling() {
    return isTelling;
  }

  /** What is missing now. */
  Shortfall of(PullMoment now, long timeMicros) {
    Optional<PullBasis.Strength> pull = PullBasis.tell(samples, timeMicros, now.engineRpm());
    isTelling = pull.isPresent() && now.pedalPercent().isPresent();
    if (pull.isEmpty()) {
      last = new Shortfall.Satisfied();
      return new Shortfall.Untold();
    }
    changeTo(pull.get().basis());
    if (pull.get().value() < IDLING_SHARE * memory.most()) {
      letGo(now.seconds());
    }
    Optional<Pull> steady = window.accept(now, pull.get().value());
    if (steady.isPresent()) {
      lastSteadySeconds = now.seconds();
      last = shortfall(steady.get(), pull.get().basis());
    } else if (now.seconds() - lastSteadySeconds > SHIFTING_SECONDS) {
      last = new Shortfall.Satisfied();
    }
    return last;
  }

  private Shortfall shortfall(Pull here, PullBasis told) {
    memory.accept(here);
    watchLettingGo(here);
    if (!isAsking(here)) {
      reference = Optional.empty();
      return new Shortfall.Satisfied();
    }
    double expected = isPedalUsed(here) ? memory.expectedByPedal(here, told) : byCruise(here);
    return shortfall(here, expected, told);
  }

  private void changeTo(PullBasis told) {
    if (basis.filter(told::equals).isEmpty()) {
      basis = Optional.of(told);
      reference = Optional.empty();
      memory.forget();
      window.forget();
    }
  }

  private Shortfall shortfall(Pull here, double expected, PullBasis told) {
    double percent =
        expected <= 0
            ? 0
            : Math.max(0, 100 * (1 - here.strength() / expected) - told.blurPercent());
    if (percent < MISSING_PERCENT) {
      return new Shortfall.Satisfied();
    }
    Optional<Derate.Loss> loss =
        told == PullBasis.TORQUE
            ? Optional.of(Derate.Loss.of(expected - here.strength(), here.rpm()))
            : Optional.empty();
    return new Shortfall.Missing(percent, percent, loss);
  }

  private boolean isAsking(Pull here) {
    if (isPedalUsed(here)) {
      return here.leastPedal() >= ASKING_PERCENT;
    }
    return here.strength() >= ASKING_SHARE * memory.most();
  }

  /** Not under cruise control, and not where no pedal is told. */
  private static boolean isPedalUsed(Pull here) {
    return here.leastPedal() >= RESTING_PERCENT;
  }

  private void watchLettingGo(Pull here) {
    double before = memory.before(here, LET_GO_WITHIN_SECONDS).strength();
    if (before - here.strength() > LET_GO_SHARE * memory.most()) {
      letGo(here.seconds());
    }
  }

  /** What was pulled before says nothing about what is asked for from now on. */
  private void letGo(double seconds) {
    letGoAt = seconds;
    reference = Optional.empty();
  }

  private double byCruise(Pull here) {
    double before = memory.before(here, SLOWING_SECONDS).speed();
    if (reference.isEmpty() && here.speed() <= before - SLOWING_BY) {
      reference = memory.bestBySpeed(here, letGoAt);
    }
    double expected = reference.map(best -> memory.byCruise(best, here)).orElse(0.0);
    if (expected * (1 - MISSING_PERCENT / 100) <= here.strength()) {
      reference = Optional.empty();
    }
    return expected;
  }
}
