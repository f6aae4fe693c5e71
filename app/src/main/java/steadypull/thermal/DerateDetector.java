package steadypull.thermal;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.vehicle.Limit;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/**
 * Tells from demanded and delivered torque whether the engine control cuts torque, and whether heat
 * is the cause. Gear-change cuts, turbo lag and a lifted foot are not derates: the cut must last,
 * while the driver asks for torque, at a channel near or over its limit.
 *
 * <p>A stored trouble code for which control units limit power is another cause, which easing does
 * not end. At a hot channel it is believed only if it came up during this drive: codes stay stored
 * for weeks after the fault has gone. Deterministic; pipeline thread only.
 */
public final class DerateDetector {
  /** A derate, unless the vehicle says otherwise (contracts): points of reference torque. */
  private static final double LEAST_CUT_PERCENT = 5;

  private static final double LASTING_SECONDS = 3;

  /** Sensors lag and round; a channel this near its limit counts as hot (estimated). */
  private static final double NEAR_LIMIT_KELVIN = 3;

  /** Below this demand nobody asks for power: creeping, coasting, cruise control off. */
  private static final double LEAST_DEMAND_PERCENT = 30;

  /** While demand rose by so much within the turbo's time, boost is still building. */
  private static final double DEMAND_RISE_PERCENT = 10;

  /** Turbo lag and smoke limit, 2 to 4 s (common practice, no source). */
  private static final double BOOST_SECONDS = 4;

  /** Power far down for long at no hot channel is no derate that easing would end. */
  private static final double POWER_LIMITED_CUT_PERCENT = 20;

  private static final double POWER_LIMITED_SECONDS = 20;

  /** With a stored code that explains it, less and shorter is enough (estimated). */
  private static final double CODED_CUT_PERCENT = 10;

  private static final double CODED_SECONDS = 5;
  private static final double FRESH_SECONDS = 5;
  private static final double TEMPERATURE_FRESH_SECONDS = 15;
  private static final double MICROS_PER_SECOND = 1e6;

  private final Vehicle vehicle;
  private final LatestSamples samples = new LatestSamples();
  private TroubleCodes codes = TroubleCodes.unknown();
  private Derate state = new Derate.None();
  private OptionalDouble shortSince = OptionalDouble.empty();
  private OptionalDouble closedSince = OptionalDouble.empty();
  private double settledDemand;
  private double demandRoseAt = Double.NEGATIVE_INFINITY;
  private OptionalDouble lastGear = OptionalDouble.empty();
  private double gearChangedAt = Double.NEGATIVE_INFINITY;

  /** A detector for one vehicle's limits. */
  public DerateDetector(Vehicle vehicle) {
    this.vehicle = vehicle;
  }

  /** Takes a sample; times do not run backwards. */
  public void accept(Sample sample) {
    samples.accept(sample);
  }

  /** Takes the trouble codes as they are known from now on. */
  public void accept(TroubleCodes told) {
    codes = told;
  }

  /**
   * The state at a whole second of the trip.
   *
   * @param timeMicros microseconds since trip start, later than the last tick
   */
  public Derate tick(long timeMicros) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    OptionalDouble demanded = samples.within(Channels.DEMANDED_TORQUE, timeMicros, FRESH_SECONDS);
    OptionalDouble delivered = samples.within(Channels.DELIVERED_TORQUE, timeMicros, FRESH_SECONDS);
    if (demanded.isEmpty() || delivered.isEmpty()) {
      forget();
      return state;
    }
    double cut = demanded.getAsDouble() - delivered.getAsDouble();
    watchDemand(seconds, demanded.getAsDouble());
    watchGear(seconds, timeMicros);
    boolean isShort =
        cut >= LEAST_CUT_PERCENT
            && demanded.getAsDouble() >= LEAST_DEMAND_PERCENT
            && (isCutting() || !isExcused(seconds));
    note(seconds, isShort);
    state = next(seconds, timeMicros, cut);
    return state;
  }

  private void note(double seconds, boolean isShort) {
    if (isShort) {
      shortSince = OptionalDouble.of(shortSince.orElse(seconds));
      closedSince = OptionalDouble.empty();
    } else {
      shortSince = OptionalDouble.empty();
      closedSince = OptionalDouble.of(closedSince.orElse(seconds));
    }
  }

  private Derate next(double seconds, long timeMicros, double cut) {
    return switch (state) {
      case Derate.None() -> fromNone(seconds, timeMicros, cut);
      case Derate.Active(Channel cause, long since, double before) -> {
        double now = shortSince.isPresent() ? cut : before;
        if (isOver(seconds)) {
          yield new Derate.None();
        }
        yield isExplainedByNewFault()
            ? new Derate.PowerLimited(since, now)
            : new Derate.Active(cause, since, now);
      }
      case Derate.PowerLimited(long since, double before) ->
          isOver(seconds)
              ? new Derate.None()
              : new Derate.PowerLimited(since, shortSince.isPresent() ? cut : before);
    };
  }

  private Derate fromNone(double seconds, long timeMicros, double cut) {
    if (shortSince.isEmpty()) {
      return state;
    }
    double began = shortSince.getAsDouble();
    long beganMicros = Math.round(began * MICROS_PER_SECOND);
    double lasted = seconds - began;
    Optional<Channel> hot = hottest(timeMicros);
    if (hot.isPresent()) {
      return lasted < LASTING_SECONDS ? state : atHotChannel(hot.get(), beganMicros, cut);
    }
    return isLimited(cut, lasted) ? new Derate.PowerLimited(beganMicros, cut) : state;
  }

  private Derate atHotChannel(Channel hot, long beganMicros, double cut) {
    return isExplainedByNewFault()
        ? new Derate.PowerLimited(beganMicros, cut)
        : new Derate.Active(hot, beganMicros, cut);
  }

  /** Whether so much power has been missing for so long at no hot channel. */
  private boolean isLimited(double cut, double seconds) {
    return (cut >= POWER_LIMITED_CUT_PERCENT && seconds >= POWER_LIMITED_SECONDS)
        || (isExplainedByFault() && cut >= CODED_CUT_PERCENT && seconds >= CODED_SECONDS);
  }

  /** Whether a code is stored for which a control unit limits power, or may. */
  private boolean isExplainedByFault() {
    return codes.stored().stream()
        .map(code -> CodeCause.of(code.text()))
        .anyMatch(cause -> cause == CodeCause.FAULT || cause == CodeCause.MAKERS);
  }

  private boolean isExplainedByNewFault() {
    return codes.stored().stream()
        .filter(code -> code.cameUpMicros().isPresent())
        .anyMatch(code -> CodeCause.of(code.text()) == CodeCause.FAULT);
  }

  private boolean isOver(double seconds) {
    return closedSince.isPresent() && seconds - closedSince.getAsDouble() >= LASTING_SECONDS;
  }

  private boolean isCutting() {
    return !(state instanceof Derate.None);
  }

  /** Whether a gap is explained by boost that builds or by a gear that changes. */
  private boolean isExcused(double seconds) {
    return seconds - demandRoseAt < BOOST_SECONDS || seconds - gearChangedAt < LASTING_SECONDS;
  }

  private void watchDemand(double seconds, double demanded) {
    if (demanded > settledDemand + DEMAND_RISE_PERCENT) {
      demandRoseAt = seconds;
      settledDemand = demanded;
    }
    settledDemand = Math.min(demanded, settledDemand);
  }

  private void watchGear(double seconds, long timeMicros) {
    OptionalDouble gear = samples.within(Channels.GEAR, timeMicros, FRESH_SECONDS);
    if (gear.isPresent() && lastGear.isPresent() && !gear.equals(lastGear)) {
      gearChangedAt = seconds;
    }
    lastGear = gear.isPresent() ? gear : lastGear;
  }

  /** The channel nearest to, or farthest over, its limit, if one is near enough. */
  private Optional<Channel> hottest(long timeMicros) {
    return vehicle.limits().values().stream()
        .filter(limit -> headroom(limit, timeMicros).orElse(Double.MAX_VALUE) <= NEAR_LIMIT_KELVIN)
        .min(
            Comparator.comparingDouble(
                limit -> headroom(limit, timeMicros).orElse(Double.MAX_VALUE)))
        .map(Limit::channel);
  }

  private OptionalDouble headroom(Limit limit, long timeMicros) {
    OptionalDouble celsius = samples.within(limit.channel(), timeMicros, TEMPERATURE_FRESH_SECONDS);
    return celsius.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(limit.celsius() - celsius.getAsDouble());
  }

  private void forget() {
    state = new Derate.None();
    shortSince = OptionalDouble.empty();
    closedSince = OptionalDouble.empty();
  }
}
