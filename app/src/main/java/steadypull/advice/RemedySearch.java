package steadypull.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitSystem;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.LimitForecast;
import steadypull.vehicle.SpeedRange;

/**
 * Finds the mildest action that holds, by asking the model: what costs no time first (air
 * conditioning, a gear), then speed, then a stop. Asks at most seven times a search.
 */
final class RemedySearch {
  /** One step asks for no more than this. */
  static final double LARGEST_STEP_KM_H = 15;

  /** Less than this is no advice. */
  private static final double SMALLEST_STEP_KM_H = 2;

  /** Slower is traffic or a yard, where no speed is advised (common practice, no source). */
  static final double HARDLY_MOVING_KM_H = 20;

  /** Steeper down than this is a descent. */
  static final double DESCENT_PERCENT = -2;

  /** A gear turns pump and fan faster; boost is taken to stay, so that air gains nothing by it. */
  private static final Set<Channel> HELPED_BY_GEAR =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final double KILOMETRES_PER_MILE = 1.609344;

  /** What counts as holding: at most this probability that the limit is reached after all. */
  private static final double RISK_ACCEPTED = 0.2;

  private static final int QUARTILE = Fan.LEVELS.indexOf(0.75);
  private static final int TENTH = Fan.LEVELS.indexOf(0.90);
  private static final double WINDOW_SECONDS = 180;
  private static final double SLOW_WINDOW_SECONDS = 600;

  private final SpeedRange speeds;
  private double gridKilometresPerHour;

  RemedySearch(SpeedRange speeds, UnitSystem units) {
    this.speeds = speeds;
    roundIn(units);
  }

  /** From now on speeds are chosen round in these units. */
  void roundIn(UnitSystem units) {
    gridKilometresPerHour = units == UnitSystem.METRIC ? 5 : 5 * KILOMETRES_PER_MILE;
  }

  /** Whether a remedy may still stand in this situation. */
  boolean permits(Remedy remedy, SituationFacts facts) {
    return switch (remedy) {
      case Remedy.EaseTo ease ->
          isFree(facts)
              && facts.speed().isPresent()
              && facts.speed().getAsDouble() - ease.kilometresPerHour() <= LARGEST_STEP_KM_H;
      case Remedy.AirConditioningOff _ -> isFree(facts) && facts.mayGoWithoutAirConditioning();
      case Remedy.GearLower _ -> isFree(facts);
      case Remedy.NextParkingArea _ -> isFree(facts) || breaksOnDescent(facts);
      case Remedy.EaseOff _ -> isFree(facts);
      case Remedy.OnDescent _ -> isDescent(facts) && !breaksOnDescent(facts);
      case Remedy.Standing _ -> isStanding(facts);
    };
  }

  private static boolean isFree(SituationFacts facts) {
    return !isDescent(facts) && !isStanding(facts);
  }

  private static boolean isDescent(SituationFacts facts) {
    return facts.grade().isPresent() && facts.grade().getAsDouble() <= DESCENT_PERCENT;
  }

  private static boolean isStanding(SituationFacts facts) {
    return facts.speed().isPresent() && facts.speed().getAsDouble() < HARDLY_MOVING_KM_H;
  }

  /**
   * Searches anew.
   *
   * @param isGearTaken whether the driver has already taken the gear that was advised
   */
  Remedy search(SituationFacts facts, Set<Channel> channels, boolean isGearTaken) {
    if (isStanding(facts)) {
      return new Remedy.Standing();
    }
    if (isDescent(facts)) {
      return onDescent(facts);
    }
    if (facts.speed().isEmpty() || !isForecast(facts.situation().forecast(), channels)) {
      return new Remedy.EaseOff();
    }
    return withoutLosingTime(facts, channels, isGearTaken)
        .orElseGet(() -> search(facts, channels, facts.speed().getAsDouble()));
  }

  /** What holds at the same speed. */
  private static Optional<Remedy> withoutLosingTime(
      SituationFacts facts, Set<Channel> channels, boolean isGearTaken) {
    if (facts.mayGoWithoutAirConditioning()) {
      Forecast off = under(facts, new Forecast.Assumption.AirConditioningOff());
      if (isForecast(off, channels) && holds(off, facts.situation().forecast(), channels)) {
        return Optional.of(new Remedy.AirConditioningOff(off));
      }
    }
    if (!isGearTaken && HELPED_BY_GEAR.containsAll(channels)) {
      Forecast lower = under(facts, new Forecast.Assumption.OneGearLower());
      if (isForecast(lower, channels) && holds(lower, facts.situation().forecast(), channels)) {
        return Optional.of(new Remedy.GearLower(lower));
      }
    }
    return Optional.empty();
  }

  private static Remedy onDescent(SituationFacts facts) {
    return breaksOnDescent(facts)
        ? parking(facts.speed().orElse(0), facts.situation().forecast(), facts)
        : new Remedy.OnDescent();
  }

  /** Whether something that breaks is over its limit and, for all we know, stays there. */
  private static boolean breaksOnDescent(SituationFacts facts) {
    return isDescent(facts)
        && !isStanding(facts)
        && facts.channels().values().stream()
            .filter(each -> ThermalNature.breaks(each.channel()) && each.isOverLimit())
            .anyMatch(each -> !holds(facts.situation().forecast(), each.channel()));
  }

  private Remedy search(SituationFacts facts, Set<Channel> channels, double speed) {
    Remedy.EaseTo deepest = null;
    for (double candidate : candidates(speed)) {
      Forecast eased = under(facts, candidate);
      if (!isForecast(eased, channels)) {
        return new Remedy.EaseOff();
      }
      deepest = new Remedy.EaseTo(candidate, eased, OptionalDouble.empty());
      if (holds(eased, facts.situation().forecast(), channels)) {
        return deepest;
      }
    }
    return beyondOneStep(facts, channels, speed, Optional.ofNullable(deepest));
  }

  private Remedy beyondOneStep(
      SituationFacts facts, Set<Channel> channels, double speed, Optional<Remedy.EaseTo> deepest) {
    double lowest = onGridAtLeast(speeds.lowestKilometresPerHour());
    if (speed - SMALLEST_STEP_KM_H < lowest) {
      return parking(speed, facts.situation().forecast(), facts);
    }
    if (deepest.isEmpty()) {
      return new Remedy.EaseOff();
    }
    if (deepest.get().kilometresPerHour() <= lowest) {
      return parking(lowest, deepest.get().eased(), facts);
    }
    Forecast atLowest = under(facts, lowest);
    return holds(atLowest, facts.situation().forecast(), channels)
        ? new Remedy.EaseTo(
            deepest.get().kilometresPerHour(), deepest.get().eased(), OptionalDouble.of(lowest))
        : parking(lowest, atLowest, facts);
  }

  private static Remedy parking(double speed, Forecast leastBad, SituationFacts facts) {
    Forecast stopped = under(facts, new Forecast.Assumption.StoppedAtIdle());
    return new Remedy.NextParkingArea(speed, leastBad, stopped);
  }

  /** Speeds that one step may ask for, mildest first. */
  List<Double> candidates(double speed) {
    double fastest = Math.min(speed - SMALLEST_STEP_KM_H, speeds.highestKilometresPerHour());
    double slowest = Math.max(speed - LARGEST_STEP_KM_H, speeds.lowestKilometresPerHour());
    List<Double> found = new ArrayList<>();
    for (long step = (long) Math.floor(fastest / gridKilometresPerHour);
        step * gridKilometresPerHour >= slowest;
        step--) {
      found.add(step * gridKilometresPerHour);
    }
    return found;
  }

  private double onGridAtLeast(double speed) {
    return Math.ceil(speed / gridKilometresPerHour - 1e-9) * gridKilometresPerHour;
  }

  private static Forecast under(SituationFacts facts, double speed) {
    return under(facts, new Forecast.Assumption.SpeedEased(speed));
  }

  private static Forecast under(SituationFacts facts, Forecast.Assumption assumption) {
    return facts.situation().under().apply(assumption);
  }

  private static boolean isForecast(Forecast forecast, Set<Channel> channels) {
    return channels.stream().allMatch(each -> ready(forecast, each).isPresent());
  }

  /** Whether every channel in question keeps under its limit, and no other one newly fails. */
  private static boolean holds(Forecast eased, Forecast held, Set<Channel> channels) {
    return channels.stream().allMatch(each -> holds(eased, each))
        && eased.channels().stream()
            .map(ChannelForecast::channel)
            .filter(each -> !channels.contains(each))
            .noneMatch(each -> risk(eased, each) >= 0.5 && risk(held, each) < 0.5);
  }

  private static boolean holds(Forecast eased, Channel channel) {
    return ready(eased, channel)
        .map(each -> each.toLimit().map(limit -> holds(each, limit)).orElse(true))
        .orElse(false);
  }

  /** A channel that is over its limit holds if it is back under it at the end of its window. */
  private static boolean holds(ChannelForecast.Ready ready, LimitForecast limit) {
    if (ready.nowCelsius() < limit.limitCelsius()) {
      return ChannelFacts.probabilityInTime(ready.channel(), limit) <= RISK_ACCEPTED;
    }
    double window = ThermalNature.isSlow(ready.channel()) ? SLOW_WINDOW_SECONDS : WINDOW_SECONDS;
    double quartile = ready.fan().at(QUARTILE, window);
    double tenth = ready.fan().at(TENTH, window);
    return quartile + (tenth - quartile) * (0.80 - 0.75) / (0.90 - 0.75) < limit.limitCelsius();
  }

  private static double risk(Forecast forecast, Channel channel) {
    return ready(forecast, channel)
        .flatMap(ChannelForecast.Ready::toLimit)
        .map(LimitForecast::probability180)
        .orElse(0.0);
  }

  private static Optional<ChannelForecast.Ready> ready(Forecast forecast, Channel channel) {
    return forecast
        .of(channel)
        .flatMap(
            each ->
                each instanceof ChannelForecast.Ready ready
                    ? Optional.of(ready)
                    : Optional.empty());
  }
}
