package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;

/**
 * The most that this engine gives: a usual share of its reference torque, what the engine's own
 * word of its load makes of it, and what the pedal on the floor has shown, each weighed by how
 * wrong it may be; never less than what was seen. Pipeline thread only.
 */
final class FullPull {
  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  /**
   * The reference torque is indicated torque: friction takes 6 to 10 %, and few engines reach it in
   * use; 0.75 to 0.92 (common practice, no source).
   */
  private static final double SHARE_OF_REFERENCE = 0.84;

  private static final double USUAL_SPREAD = 0.07;

  /** A tow vehicle of which nothing is known (common practice, no source). */
  private static final PullGuess UNHEARD = new PullGuess(550, 0.3);

  private static final double FRESH_SECONDS = 3;
  private static final double FLOORED_PERCENT = 97;

  /** From here on the engine gives about all it has. */
  private static final double ALL_SHARE = 0.93;

  /** Boost has built up by then (common practice: turbo lag 2 to 4 s). */
  private static final double BOOST_SECONDS = 5;

  /** Torque asked for and not given, in percent of the reference: beyond this it is cut. */
  private static final double CUT_PERCENT = 4;

  /** A share of less is too coarse in its steps to tell the whole. */
  private static final double LEAST_LOAD_PERCENT = 40;

  /** A peak of a moment is a gear change or noise. */
  private static final double SEEN_SECONDS = 4;

  /**
   * Full-load torque of a turbo-diesel against its plateau (common practice, no source): r/min,
   * then share.
   */
  private static final double[] RPM = {600, 1000, 1400, 1600, 2600, 3200, 3800, 4300};

  private static final double[] SHARE = {0.35, 0.58, 0.88, 1, 1, 0.9, 0.62, 0.1};

  private final PullWord byPedal = new PullWord(0.02, 30);
  private final PullWord byLoad = new PullWord(0.03, 120);
  private double lately;
  private double seenNewtonMetres;
  private double flooredSeconds;
  private boolean isGivingAll;
  private OptionalDouble referenceNewtonMetres = OptionalDouble.empty();

  /** What was made of all that is above, until some of it changes: every draw asks for it. */
  private Optional<PullGuess> made = Optional.empty();

  /** Takes what the engine gave during some seconds. */
  void accept(DriveMoment moment, double span) {
    referenceNewtonMetres = moment.samples().ever(Channels.REFERENCE_TORQUE);
    made = Optional.empty();
    boolean isFloored =
        moment.fresh(Channels.ACCELERATOR_PEDAL, FRESH_SECONDS).orElse(0) >= FLOORED_PERCENT;
    flooredSeconds = isFloored ? flooredSeconds + span : 0;
    moment
        .load()
        .filter(load -> load.engineRpm() >= RPM[0])
        .ifPresent(load -> accept(moment, load, span));
    made = Optional.empty();
  }

  private void accept(DriveMoment moment, Load load, double span) {
    double rpm = load.engineRpm();
    boolean isCut = isCut(moment);
    isGivingAll = isCut || flooredSeconds > 0 || load.kilowatts() >= ALL_SHARE * kilowatts(rpm);
    if (isCut || moment.isHot()) {
      return;
    }
    double plateau = load.kilowatts() * NEWTON_METRE_RPM_PER_KILOWATT / rpm / share(rpm);
    lately += (plateau - lately) * Math.min(1, span / SEEN_SECONDS);
    seenNewtonMetres = Math.max(seenNewtonMetres, lately);
    if (flooredSeconds > BOOST_SECONDS) {
      byPedal.accept(plateau, span);
    }
    wholeByLoad(moment).ifPresent(whole -> byLoad.accept(whole / share(rpm), span));
  }

  /** Torque that is asked for and not given: heat, a limp mode, a gear change. */
  private static boolean isCut(DriveMoment moment) {
    OptionalDouble demanded = moment.fresh(Channels.DEMANDED_TORQUE, FRESH_SECONDS);
    OptionalDouble delivered = moment.fresh(Channels.DELIVERED_TORQUE, FRESH_SECONDS);
    return demanded.isPresent()
        && delivered.isPresent()
        && demanded.getAsDouble() - delivered.getAsDouble() > CUT_PERCENT;
  }

  /** N.m at the crankshaft at full load, by the share of it that the engine says it gives now. */
  private OptionalDouble wholeByLoad(DriveMoment moment) {
    OptionalDouble percent = moment.fresh(Channels.ENGINE_LOAD, FRESH_SECONDS);
    OptionalDouble delivered = moment.fresh(Channels.DELIVERED_TORQUE, FRESH_SECONDS);
    if (percent.orElse(0) < LEAST_LOAD_PERCENT
        || delivered.isEmpty()
        || referenceNewtonMetres.isEmpty()) {
      return OptionalDouble.empty();
    }
    double indicatedPercent = delivered.getAsDouble() / percent.getAsDouble() * 100;
    double newtonMetres =
        (indicatedPercent - EnginePower.FRICTION_PERCENT)
            / 100
            * referenceNewtonMetres.getAsDouble();
    return newtonMetres > 0 ? OptionalDouble.of(newtonMetres) : OptionalDouble.empty();
  }

  /**
   * Whether the engine gives all that it can now, so that the road, or heat, decides the speed and
   * not the driver.
   */
  boolean isGivingAll() {
    return isGivingAll;
  }

  /** The most torque on the plateau, and how wrong that may be. */
  PullGuess guess() {
    PullGuess guess = made.orElseGet(this::weighed);
    made = made.isPresent() ? made : Optional.of(guess);
    return guess;
  }

  private PullGuess weighed() {
    PullGuess guess =
        referenceNewtonMetres.isPresent()
            ? new PullGuess(SHARE_OF_REFERENCE * referenceNewtonMetres.getAsDouble(), USUAL_SPREAD)
            : UNHEARD;
    guess = byLoad.guess().map(guess::with).orElse(guess);
    guess = byPedal.guess().map(guess::with).orElse(guess);
    return guess.newtonMetres() >= seenNewtonMetres
        ? guess
        : new PullGuess(seenNewtonMetres, guess.spread());
  }

  /** The most power at an engine speed, kW. */
  double kilowatts(double rpm) {
    return kilowatts(guess().newtonMetres(), rpm);
  }

  /** The power of a torque on the plateau at an engine speed, kW. */
  static double kilowatts(double plateauNewtonMetres, double rpm) {
    return plateauNewtonMetres * share(rpm) * rpm / NEWTON_METRE_RPM_PER_KILOWATT;
  }

  /** The least engine speed from a present one upwards that gives a power, r/min. */
  double rpmFor(double kilowatts, double rpm) {
    return Math.max(rpm, kilowatts * NEWTON_METRE_RPM_PER_KILOWATT / guess().newtonMetres());
  }

  private static double share(double rpm) {
    if (rpm <= RPM[0]) {
      return SHARE[0];
    }
    for (int i = 1; i < RPM.length; i++) {
      if (rpm <= RPM[i]) {
        double part = (rpm - RPM[i - 1]) / (RPM[i] - RPM[i - 1]);
        return SHARE[i - 1] + part * (SHARE[i] - SHARE[i - 1]);
      }
    }
    return SHARE[SHARE.length - 1];
  }
}
