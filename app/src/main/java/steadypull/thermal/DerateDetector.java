package steadypull.thermal;

import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/**
 * Tells whether the engine control cuts torque, and whether heat is the cause: from demanded and
 * delivered torque, or, where a vehicle does not tell both, from power that falls though no less is
 * asked for. A derate is a cut that lasts at a channel near or over its limit, that was not there
 * before the heat, and that nothing else explains. Deterministic; pipeline thread only.
 */
public final class DerateDetector {
  /** A derate, unless the vehicle says otherwise (contracts): points of reference torque. */
  private static final double LEAST_CUT_PERCENT = 5;

  /** A regenerating filter costs so much at most (common practice, no source). */
  private static final double REGENERATION_PERCENT = 10;

  private static final double LASTING_SECONDS = 3;

  /** Power far down for long at no hot channel is no derate that easing would end. */
  private static final double POWER_LIMITED_CUT_PERCENT = 20;

  private static final double POWER_LIMITED_SECONDS = 20;

  /** With a stored code that explains it, less and shorter is enough (estimated). */
  private static final double CODED_CUT_PERCENT = 10;

  private static final double CODED_SECONDS = 5;
  private static final double MICROS_PER_SECOND = 1e6;

  private final LatestSamples samples = new LatestSamples();
  private final HotChannels heat;
  private final PassingCuts passing = new PassingCuts();
  private final HeldSpeed limiter = new HeldSpeed();
  private final TorqueGap gap = new TorqueGap();
  private final PowerFall fall;
  private PowerFaults faults = new PowerFaults(TroubleCodes.unknown());
  private Derate state = new Derate.None();
  private boolean isGapTold;

  /** Torque is missing that nothing passing explains. */
  private final Lasting missingAtAll = new Lasting();

  /** The same for what was not missing before a channel got hot. */
  private final Lasting missingAnew = new Lasting();

  private boolean isCut;

  /** By the time that a gap is told another channel may be the hottest. */
  private Optional<Channel> hotAsItBegan = Optional.empty();

  /** A detector for one vehicle's limits. */
  public DerateDetector(Vehicle vehicle) {
    this(vehicle, 0);
  }

  /**
   * A detector that looks for derates below the limits too.
   *
   * @param earlierKelvin so far below, 0 or more
   */
  public DerateDetector(Vehicle vehicle, double earlierKelvin) {
    heat = new HotChannels(vehicle, samples, earlierKelvin);
    fall = new PowerFall(samples, vehicle.driveline().ratedEngineSpeed());
  }

  /** Takes a sample; times do not run backwards. */
  public void accept(Sample sample) {
    samples.accept(sample);
  }

  /** Takes the trouble codes as they are known from now on. */
  public void accept(TroubleCodes told) {
    faults = new PowerFaults(told);
  }

  /**
   * Whether the last tick could tell a derate: torque, or power and how much of it is asked for.
   */
  public boolean isTelling() {
    return isGapTold || fall.isTelling();
  }

  /**
   * The state at a whole second of the trip.
   *
   * @param timeMicros microseconds since trip start, later than the last tick
   */
  public Derate tick(long timeMicros) {
    PullMoment now = PullMoment.of(samples, timeMicros);
    passing.accept(now);
    limiter.accept(now);
    Optional<Channel> hot = heat.hottest(timeMicros);
    state =
        switch (shortfall(now, timeMicros, hot.isPresent())) {
          case Shortfall.Untold() -> forgotten();
          case Shortfall.Satisfied() ->
              after(now, new Shortfall.Missing(0, 0, Optional.empty()), hot);
          case Shortfall.Missing missing -> after(now, missing, hot);
        };
    return state;
  }

  private Shortfall shortfall(PullMoment now, long timeMicros, boolean isHot) {
    if (isGapTold != now.isTorqueTold()) {
      forgotten();
      isGapTold = now.isTorqueTold();
    }
    if (isGapTold) {
      if (gap.isFullPowerGiven(now)) {
        heat.fullPowerGiven(timeMicros);
      }
      return gap.of(now, samples.ever(Channels.REFERENCE_TORQUE), isHot);
    }
    gap.pause();
    return fall.of(now, timeMicros);
  }

  private Derate after(PullMoment now, Shortfall.Missing missing, Optional<Channel> hot) {
    note(now, missing, hot);
    return switch (state) {
      case Derate.None() -> fromNone(now.seconds(), missing, hot);
      case Derate.Active active -> fromActive(now.seconds(), missing, active);
      case Derate.PowerLimited limited -> fromLimited(now.seconds(), missing, limited);
    };
  }

  private void note(PullMoment now, Shortfall.Missing missing, Optional<Channel> hot) {
    boolean isMissing = missing.percent() >= LEAST_CUT_PERCENT;
    if (isMissing && !isCut) {
      limiter.cutBegins();
      hotAsItBegan = isGapTold ? hot : Optional.empty();
    }
    isCut = isMissing;
    boolean counts = isTold() || !isExcused(now, missing);
    missingAtAll.note(now.seconds(), counts && isMissing);
    missingAnew.note(now.seconds(), counts && missing.newPercent() >= LEAST_CUT_PERCENT);
  }

  private boolean isExcused(PullMoment now, Shortfall.Missing missing) {
    return passing.isOne(now.seconds())
        || limiter.isLimited()
        || (now.isRegenerating() && missing.percent() < REGENERATION_PERCENT);
  }

  private Derate fromNone(double seconds, Shortfall.Missing missing, Optional<Channel> hot) {
    if (hot.isPresent() && missingAnew.holds()) {
      double began = missingAnew.since().orElseThrow();
      return seconds - began < LASTING_SECONDS
          ? state
          : atHotChannel(hot.get(), micros(began), missing);
    }
    if (hot.isEmpty() && missingAtAll.holds()) {
      double began = missingAtAll.since().orElseThrow();
      return isLimited(missing.percent(), seconds - began)
          ? new Derate.PowerLimited(micros(began), missing.percent())
          : state;
    }
    return state;
  }

  private Derate atHotChannel(Channel hot, long beganMicros, Shortfall.Missing missing) {
    return faults.explainEvenAtHeat()
        ? new Derate.PowerLimited(beganMicros, missing.percent())
        : new Derate.Active(
            hotAsItBegan.orElse(hot), beganMicros, missing.newPercent(), missing.loss());
  }

  private Derate fromActive(double seconds, Shortfall.Missing missing, Derate.Active active) {
    if (missingAnew.isOverFor(LASTING_SECONDS, seconds)) {
      return new Derate.None();
    }
    boolean isShort = missingAnew.holds();
    if (faults.explainEvenAtHeat()) {
      return new Derate.PowerLimited(
          active.sinceMicros(), isShort ? missing.percent() : active.cutPercent());
    }
    return isShort
        ? new Derate.Active(
            active.cause(), active.sinceMicros(), missing.newPercent(), missing.loss())
        : active;
  }

  private Derate fromLimited(
      double seconds, Shortfall.Missing missing, Derate.PowerLimited limited) {
    if (missingAtAll.isOverFor(LASTING_SECONDS, seconds)) {
      return new Derate.None();
    }
    return missingAtAll.holds()
        ? new Derate.PowerLimited(limited.sinceMicros(), missing.percent())
        : limited;
  }

  /** Whether so much power has been missing for so long at no hot channel. */
  private boolean isLimited(double percent, double seconds) {
    return isGapTold
        && ((percent >= POWER_LIMITED_CUT_PERCENT && seconds >= POWER_LIMITED_SECONDS)
            || (faults.mayExplain() && percent >= CODED_CUT_PERCENT && seconds >= CODED_SECONDS));
  }

  private boolean isTold() {
    return !(state instanceof Derate.None);
  }

  private static long micros(double seconds) {
    return Math.round(seconds * MICROS_PER_SECOND);
  }

  private Derate forgotten() {
    state = new Derate.None();
    isCut = false;
    missingAtAll.forget();
    missingAnew.forget();
    return state;
  }
}
