package steadypull.advice;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Derate;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.LimitForecast;
import steadypull.vehicle.TroubleCodes;

/** Builds a situation by hand. Starts calm: engine running at 90 km/h, everything heard. */
final class SituationDraft {
  private final Map<Channel, Double> values = new LinkedHashMap<>();
  private final Map<Channel, ChannelForecast> held = new LinkedHashMap<>();
  private Derate derate = new Derate.None();
  private TroubleCodes codes = TroubleCodes.unknown();
  private double secondsSilent;
  private boolean roadAheadKnown;
  private double holdsAt = 200;
  private double riskWhereItDoesNotHold = 0.7;
  private boolean settlesUnderWhereItDoesNotHold;
  private final Map<Channel, Sample> heardBefore = new LinkedHashMap<>();
  private Surroundings surroundings = Surroundings.UNKNOWN;
  private final Set<Channel> spoiltByEasing = new HashSet<>();
  private final Set<Class<? extends Forecast.Assumption>> holding = new HashSet<>();
  private final Set<Channel> onlyForecastAsItIs = new HashSet<>();

  /** How often the model was asked. */
  int modelCalls;

  SituationDraft() {
    values.put(Channels.ENGINE_SPEED, 2200.0);
    values.put(Channels.VEHICLE_SPEED, 90.0);
  }

  SituationDraft with(Channel channel, double value) {
    values.put(channel, value);
    return this;
  }

  /** What was heard at that moment and not since. */
  SituationDraft lastHeard(Channel channel, double value, double atSeconds) {
    values.remove(channel);
    heardBefore.put(channel, new Sample(channel, Math.round(atSeconds * 1e6), value));
    return this;
  }

  SituationDraft surroundings(Surroundings known) {
    surroundings = known;
    return this;
  }

  SituationDraft speed(double kilometresPerHour) {
    return with(Channels.VEHICLE_SPEED, kilometresPerHour);
  }

  /** A forecast that keeps well under the limit. */
  SituationDraft calm(Channel channel, double now, double limit) {
    held.put(channel, ready(channel, now, now, limit, 0, OptionalDouble.empty()));
    return this;
  }

  /** A forecast that meets the limit, or may. */
  SituationDraft nearing(Channel channel, double now, double limit, double p180, double seconds) {
    return nearing(channel, now, limit, p180, p180, seconds);
  }

  SituationDraft nearing(
      Channel channel, double now, double limit, double p180, double p600, double seconds) {
    held.put(
        channel, ready(channel, now, limit + 5, limit, p180, p600, OptionalDouble.of(seconds)));
    return this;
  }

  SituationDraft may(Channel channel, double now, double limit, double p180) {
    held.put(channel, ready(channel, now, limit - 2, limit, p180, OptionalDouble.empty()));
    return this;
  }

  SituationDraft learning(Channel channel) {
    held.put(channel, new ChannelForecast.Learning(channel));
    return this;
  }

  SituationDraft noData(Channel channel) {
    held.put(channel, new ChannelForecast.NoData(channel, 8));
    return this;
  }

  SituationDraft derate(Derate state) {
    derate = state;
    return this;
  }

  /** The vehicle was asked for codes and has none. */
  SituationDraft noCodes() {
    codes = new TroubleCodes(Set.of(TroubleCodes.Status.STORED), List.of());
    return this;
  }

  /** A stored code that was there when the vehicle was asked first. */
  SituationDraft code(String text, String meaning) {
    return code(text, meaning, OptionalLong.empty());
  }

  /** A stored code that came up on this drive. */
  SituationDraft newCode(String text, String meaning, double atSeconds) {
    return code(text, meaning, OptionalLong.of(Math.round(atSeconds * 1e6)));
  }

  private SituationDraft code(String text, String meaning, OptionalLong cameUpMicros) {
    List<TroubleCodes.Code> all = new ArrayList<>(codes.codes());
    Optional<String> known = Optional.of(meaning).filter(words -> !words.isEmpty());
    all.add(new TroubleCodes.Code(text, known, TroubleCodes.Status.STORED, "7E8", cameUpMicros));
    codes = new TroubleCodes(Set.of(TroubleCodes.Status.STORED), all);
    return this;
  }

  SituationDraft silent(double seconds) {
    secondsSilent = seconds;
    return this;
  }

  SituationDraft roadAheadKnown() {
    roadAheadKnown = true;
    return this;
  }

  /** The model: at this speed and under, what is near its limit settles 9 degrees under it. */
  SituationDraft holdsAt(double kilometresPerHour) {
    holdsAt = kilometresPerHour;
    return this;
  }

  /** The model: one gear lower holds what is near its limit. */
  SituationDraft holdsOneGearLower() {
    holding.add(Forecast.Assumption.OneGearLower.class);
    return this;
  }

  /** The model: without air conditioning holds what is near its limit. */
  SituationDraft holdsWithoutAirConditioning() {
    holding.add(Forecast.Assumption.AirConditioningOff.class);
    return this;
  }

  /** The model: the engine cools down where the rig stops. */
  SituationDraft coolsAtIdle() {
    holding.add(Forecast.Assumption.StoppedAtIdle.class);
    return this;
  }

  /** The model: probability that the limit is reached at speeds that do not hold. */
  SituationDraft riskWhereItDoesNotHold(double probability) {
    riskWhereItDoesNotHold = probability;
    return this;
  }

  /** The model: speeds that do not hold settle just under the limit, with too much risk. */
  SituationDraft mayWhereItDoesNotHold() {
    riskWhereItDoesNotHold = 0.4;
    settlesUnderWhereItDoesNotHold = true;
    return this;
  }

  /** The model: what another load does to this channel cannot be told. */
  SituationDraft onlyForecastAsItIs(Channel channel) {
    onlyForecastAsItIs.add(channel);
    return this;
  }

  /** The model: this channel gets worse at any lower speed, as for want of air. */
  SituationDraft spoiltByEasing(Channel channel) {
    spoiltByEasing.add(channel);
    return this;
  }

  Situation at(double seconds) {
    long timeMicros = Math.round(seconds * 1e6);
    long heardMicros = Math.max(0, timeMicros - Math.round(secondsSilent * 1e6));
    Map<Channel, Sample> latest = new LinkedHashMap<>(heardBefore);
    values.forEach((each, value) -> latest.put(each, new Sample(each, heardMicros, value)));
    Forecast now =
        new Forecast(timeMicros, new Forecast.Assumption.LoadHeld(), List.copyOf(held.values()));
    return new Situation(
        timeMicros,
        now,
        assumption -> under(timeMicros, assumption),
        latest,
        derate,
        secondsSilent,
        roadAheadKnown,
        codes,
        surroundings);
  }

  private Forecast under(long timeMicros, Forecast.Assumption assumption) {
    modelCalls++;
    boolean holds =
        assumption instanceof Forecast.Assumption.SpeedEased eased
            ? eased.kilometresPerHour() <= holdsAt
            : holding.contains(assumption.getClass());
    return new Forecast(
        timeMicros, assumption, held.values().stream().map(each -> eased(each, holds)).toList());
  }

  private ChannelForecast eased(ChannelForecast held, boolean speedHolds) {
    if (!(held instanceof ChannelForecast.Ready ready) || ready.toLimit().isEmpty()) {
      return held;
    }
    if (onlyForecastAsItIs.contains(held.channel())) {
      return new ChannelForecast.Learning(held.channel());
    }
    boolean isSpoilt = spoiltByEasing.contains(held.channel());
    if (ready.toLimit().get().probability180() == 0 && !isSpoilt) {
      return held;
    }
    double limit = ready.toLimit().get().limitCelsius();
    double now = ready.nowCelsius();
    OptionalDouble never = OptionalDouble.empty();
    if (speedHolds && !isSpoilt) {
      return ready(ready.channel(), now, limit - 9, limit, 0.1, never);
    }
    return settlesUnderWhereItDoesNotHold
        ? ready(ready.channel(), now, limit - 2, limit, riskWhereItDoesNotHold, never)
        : ready(
            ready.channel(), now, limit + 3, limit, riskWhereItDoesNotHold, OptionalDouble.of(110));
  }

  private static ChannelForecast.Ready ready(
      Channel channel,
      double now,
      double settles,
      double limit,
      double p180,
      OptionalDouble seconds) {
    return ready(channel, now, settles, limit, p180, p180, seconds);
  }

  private static ChannelForecast.Ready ready(
      Channel channel,
      double now,
      double settles,
      double limit,
      double p180,
      double p600,
      OptionalDouble seconds) {
    OptionalDouble never = OptionalDouble.empty();
    boolean comes = seconds.isPresent();
    LimitForecast toLimit =
        new LimitForecast(
            limit,
            p180,
            p600,
            seconds,
            comes ? OptionalDouble.of(seconds.getAsDouble() * 0.6) : never,
            comes ? OptionalDouble.of(seconds.getAsDouble() * 0.8) : never,
            comes ? OptionalDouble.of(seconds.getAsDouble() * 1.3) : never,
            never);
    return new ChannelForecast.Ready(
        channel, now, fan(now, settles), settles, Optional.of(toLimit));
  }

  /** Approaches where it settles with a time constant of 60 s; half a degree between quantiles. */
  private static Fan fan(double now, double settles) {
    double[] secondsAhead = new double[61];
    double[][] celsius = new double[Fan.LEVELS.size()][secondsAhead.length];
    for (int point = 0; point < secondsAhead.length; point++) {
      secondsAhead[point] = point * 10;
      double median = settles + (now - settles) * Math.exp(-secondsAhead[point] / 60);
      for (int level = 0; level < celsius.length; level++) {
        celsius[level][point] = median + (point == 0 ? 0 : (level - Fan.MEDIAN) * 0.5);
      }
    }
    return new Fan(secondsAhead, celsius);
  }
}
