package steadypull.advice;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Derate;
import steadypull.thermal.LimitForecast;
import steadypull.thermal.OutsidePressure;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/** A situation put in order: what is fresh, by channel, with the drive's history up to it. */
final class SituationFacts {
  /** Older samples say nothing about now (common practice, no source). */
  private static final long FRESH_MICROS = 15_000_000;

  /** With nothing heard for so long the link counts as lost. */
  static final double LINK_LOST_SECONDS = 5;

  private static final double ENGINE_STANDS_RPM = 1;

  /** A signal of the vehicle's own, where somebody has entered it. */
  private static final Channel FAN_SPEED = new Channel("fan_speed", "r/min");

  private static final double FLAT_OUT_PEDAL_PERCENT = 95;

  /** Whether the air conditioning is on, 0 or 1; a signal of the vehicle's own. */
  private static final Channel AIR_CONDITIONING = new Channel("air_conditioning", "1");

  /** Hotter outside it may be a matter of health for people and animals (our choice). */
  private static final double WARM_FOR_PEOPLE_CELSIUS = 28;

  private final Vehicle vehicle;
  private final Situation situation;
  private final DriveHistory history;
  private final Map<Channel, ChannelFacts> channels = new LinkedHashMap<>();

  /** Many rules look at the same quantities: each is put together once a second. */
  private final Map<String, Object> ofVehicle = new HashMap<>();

  private final Map<Channel, Map<String, Object>> ofChannels = new HashMap<>();

  /**
   * Puts a situation in order.
   *
   * @param history of the drive, up to this situation once it has taken it
   */
  SituationFacts(Vehicle vehicle, Situation situation, DriveHistory history) {
    this.vehicle = vehicle;
    this.situation = situation;
    this.history = history;
    thermalChannels(situation).forEach(each -> channels.put(each, facts(vehicle, each)));
  }

  private static Stream<Channel> thermalChannels(Situation situation) {
    return Stream.concat(
            situation.forecast().channels().stream().map(ChannelForecast::channel),
            Channels.thermal().stream().filter(situation.latest()::containsKey))
        .distinct();
  }

  private ChannelFacts facts(Vehicle vehicle, Channel channel) {
    Optional<ChannelForecast.Ready> ready =
        switch (situation.forecast().of(channel).orElse(new ChannelForecast.Learning(channel))) {
          case ChannelForecast.Ready forecast -> Optional.of(forecast);
          case ChannelForecast.Learning _ -> Optional.empty();
          case ChannelForecast.NoData _ -> Optional.empty();
        };
    OptionalDouble sample = fresh(channel);
    OptionalDouble value =
        sample.isPresent()
            ? sample
            : ready
                .map(each -> OptionalDouble.of(each.nowCelsius()))
                .orElse(OptionalDouble.empty());
    return new ChannelFacts(channel, value, limit(vehicle, channel, ready), ready, causes(channel));
  }

  private OptionalDouble limit(
      Vehicle vehicle, Channel channel, Optional<ChannelForecast.Ready> ready) {
    return ready
        .flatMap(ChannelForecast.Ready::toLimit)
        .map(LimitForecast::limitCelsius)
        .or(() -> vehicle.limit(channel, kilopascals()).map(Limit::celsius))
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private double kilopascals() {
    return OutsidePressure.kilopascals(situation.latest(), situation.timeMicros());
  }

  private boolean causes(Channel channel) {
    return situation.derate() instanceof Derate.Active active && active.cause().equals(channel);
  }

  /** The last value of a channel if it was heard lately. */
  OptionalDouble fresh(Channel channel) {
    Sample sample = situation.latest().get(channel);
    return sample == null || situation.timeMicros() - sample.timeMicros() > FRESH_MICROS
        ? OptionalDouble.empty()
        : OptionalDouble.of(sample.value());
  }

  DriveHistory history() {
    return history;
  }

  Situation situation() {
    return situation;
  }

  long timeMicros() {
    return situation.timeMicros();
  }

  /** Every thermal channel seen so far. */
  Map<Channel, ChannelFacts> channels() {
    return channels;
  }

  Optional<ChannelFacts> of(Channel channel) {
    return Optional.ofNullable(channels.get(channel));
  }

  OptionalDouble speed() {
    return fresh(Channels.VEHICLE_SPEED);
  }

  OptionalDouble grade() {
    return fresh(Channels.ROAD_GRADE);
  }

  boolean isFlatOut() {
    return fresh(Channels.ACCELERATOR_PEDAL).orElse(0) >= FLAT_OUT_PEDAL_PERCENT;
  }

  /** Whether the air conditioning is known to be on and nobody is harmed without it. */
  boolean mayGoWithoutAirConditioning() {
    return fresh(AIR_CONDITIONING).orElse(0) >= 0.5
        && fresh(Channels.AMBIENT_AIR_TEMP).orElse(WARM_FOR_PEOPLE_CELSIUS)
            < WARM_FOR_PEOPLE_CELSIUS;
  }

  /** Whether the air conditioning is known to be off. */
  boolean isAirConditioningOff() {
    return fresh(AIR_CONDITIONING).orElse(1) < 0.5;
  }

  /** Engine revolutions for each km/h: what changes with the gear. Empty while hardly moving. */
  OptionalDouble turning() {
    OptionalDouble rpm = fresh(Channels.ENGINE_SPEED);
    OptionalDouble speed = speed();
    return rpm.isPresent()
            && speed.isPresent()
            && speed.getAsDouble() >= RemedySearch.HARDLY_MOVING_KM_H
        ? OptionalDouble.of(rpm.getAsDouble() / speed.getAsDouble())
        : OptionalDouble.empty();
  }

  boolean isLinkLost() {
    return situation.secondsSilent() >= LINK_LOST_SECONDS;
  }

  /** Whether the last that was heard of the engine is that it stands. */
  boolean isEngineOff() {
    Sample sample = situation.latest().get(Channels.ENGINE_SPEED);
    return sample != null && sample.value() < ENGINE_STANDS_RPM;
  }

  /** The vehicle's quantities by rule variable; absent where nobody has heard them lately. */
  Map<String, Object> variables() {
    if (ofVehicle.isEmpty()) {
      ofVehicle.putAll(vehicleVariables());
    }
    return Collections.unmodifiableMap(ofVehicle);
  }

  private Map<String, Object> vehicleVariables() {
    Map<String, Object> variables = new HashMap<>();
    variables.put(RuleVariable.ROAD_KNOWN.id(), situation.roadAheadKnown());
    variables.put(RuleVariable.SECONDS_SILENT.id(), situation.secondsSilent());
    variables.put(RuleVariable.POWER_LIMITED.id(), isPowerLimited());
    variables.put(RuleVariable.POWER_CUT.id(), powerCutPercent());
    putCodes(variables);
    put(variables, RuleVariable.SPEED, speed());
    put(variables, RuleVariable.GRADE, grade());
    put(variables, RuleVariable.ENGINE_SPEED, fresh(Channels.ENGINE_SPEED));
    put(variables, RuleVariable.ENGINE_LOAD, fresh(Channels.ENGINE_LOAD));
    put(variables, RuleVariable.PEDAL, fresh(Channels.ACCELERATOR_PEDAL));
    put(variables, RuleVariable.AMBIENT, fresh(Channels.AMBIENT_AIR_TEMP));
    put(variables, RuleVariable.VOLTAGE, fresh(Channels.MODULE_VOLTAGE));
    put(variables, RuleVariable.FAN_SPEED, fresh(FAN_SPEED));
    putHistory(variables);
    putSurroundings(variables, situation.surroundings());
    return variables;
  }

  /**
   * The same with one channel's quantities.
   *
   * @param hotterBy counted on top of the value, the deadband of a raised rule
   */
  Map<String, Object> variables(Channel channel, double hotterBy) {
    return hotterBy == 0
        ? Collections.unmodifiableMap(
            ofChannels.computeIfAbsent(channel, each -> channelVariables(each, 0)))
        : channelVariables(channel, hotterBy);
  }

  private Map<String, Object> channelVariables(Channel channel, double hotterBy) {
    Map<String, Object> variables = new HashMap<>(variables());
    variables.put(RuleVariable.BREAKS.id(), ThermalNature.breaks(channel));
    variables.put(RuleVariable.DERATING.id(), causes(channel));
    of(channel).ifPresent(facts -> put(variables, facts, hotterBy));
    put(variables, RuleVariable.RISES_60, history.risesIn60Seconds(channel));
    put(variables, RuleVariable.FALLS_30, history.fallsIn30Seconds(channel));
    put(variables, RuleVariable.SECONDS_UNHEARD, secondsUnheard(channel));
    variables.put(RuleVariable.SECONDS_SINCE_OVER.id(), history.secondsSinceOver(channel));
    variables.put(RuleVariable.LIMIT_UNCONFIRMED.id(), isLimitUnconfirmed(channel));
    variables.put(RuleVariable.WARNED.id(), history.isWarned(channel));
    return variables;
  }

  private void putHistory(Map<String, Object> variables) {
    variables.put(RuleVariable.SECONDS_RUNNING.id(), history.secondsRunning());
    variables.put(RuleVariable.SECONDS_STANDING.id(), history.secondsStanding());
    variables.put(RuleVariable.HARD_PULL_SECONDS.id(), history.hardPullSeconds());
    put(variables, RuleVariable.CHARGE_AIR_ABOVE_COOLANT, chargeAirAboveCoolant());
  }

  private static void putSurroundings(Map<String, Object> variables, Surroundings around) {
    put(variables, RuleVariable.CLIMB_METRES, around.climbMetres());
    put(variables, RuleVariable.CLIMB_GRADE, around.climbGradePercent());
    variables.put(RuleVariable.COOLER_FALL.id(), around.coolerFallPercent());
  }

  /** How much hotter charge air is than the coolant of its cooler; empty without such a circuit. */
  OptionalDouble chargeAirAboveCoolant() {
    OptionalDouble air = fresh(Channels.CHARGE_AIR_TEMP_OUT);
    OptionalDouble coolant = fresh(Channels.CHARGE_COOLANT_TEMP);
    return air.isPresent() && coolant.isPresent()
        ? OptionalDouble.of(air.getAsDouble() - coolant.getAsDouble())
        : OptionalDouble.empty();
  }

  /** Seconds since a channel was heard that was heard before; empty if it never was. */
  OptionalDouble secondsUnheard(Channel channel) {
    Sample sample = situation.latest().get(channel);
    return sample == null
        ? OptionalDouble.empty()
        : OptionalDouble.of((situation.timeMicros() - sample.timeMicros()) / 1e6);
  }

  private boolean isLimitUnconfirmed(Channel channel) {
    return vehicle
        .limit(channel)
        .filter(limit -> limit.provenance().kind() == Provenance.Kind.DEFAULT)
        .isPresent();
  }

  private static void put(Map<String, Object> variables, ChannelFacts facts, double hotterBy) {
    facts.value().ifPresent(value -> variables.put(RuleVariable.VALUE.id(), value + hotterBy));
    put(variables, RuleVariable.LIMIT, facts.limit());
    if (facts.value().isPresent() && facts.limit().isPresent()) {
      double headroom = facts.limit().getAsDouble() - facts.value().getAsDouble();
      variables.put(RuleVariable.HEADROOM.id(), headroom - hotterBy);
    }
    facts
        .forecast()
        .ifPresent(each -> variables.put(RuleVariable.SETTLES_AT.id(), each.settlesAtCelsius()));
    facts.toLimit().ifPresent(each -> put(variables, facts.channel(), each));
  }

  private static void put(Map<String, Object> variables, Channel channel, LimitForecast toLimit) {
    variables.put(RuleVariable.PROBABILITY_180.id(), toLimit.probability180());
    variables.put(RuleVariable.PROBABILITY_600.id(), toLimit.probability600());
    variables.put(
        RuleVariable.PROBABILITY_IN_TIME.id(), ChannelFacts.probabilityInTime(channel, toLimit));
    variables.put(RuleVariable.SECONDS_TO_LIMIT.id(), endless(toLimit.seconds()));
    variables.put(RuleVariable.SECONDS_TO_LIMIT_P10.id(), endless(toLimit.secondsP10()));
    variables.put(RuleVariable.SECONDS_TO_LIMIT_P90.id(), endless(toLimit.secondsP90()));
  }

  /** A time that never comes is longer than any other. */
  private static double endless(OptionalDouble seconds) {
    return seconds.orElse(Double.POSITIVE_INFINITY);
  }

  private static void put(
      Map<String, Object> variables, RuleVariable variable, OptionalDouble value) {
    value.ifPresent(each -> variables.put(variable.id(), each));
  }

  private void putCodes(Map<String, Object> variables) {
    if (codes().isStoredKnown()) {
      variables.put(RuleVariable.STORED_CODES.id(), (double) codes().stored().size());
      variables.put(RuleVariable.SECONDS_SINCE_NEW_CODE.id(), secondsSinceNewCode());
    }
  }

  /** Since a stored code came up on this drive; endless if none did. */
  private double secondsSinceNewCode() {
    return codes().stored().stream()
        .flatMapToLong(code -> code.cameUpMicros().stream())
        .mapToDouble(cameUp -> (timeMicros() - cameUp) / 1e6)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  TroubleCodes codes() {
    return situation.codes();
  }

  boolean isPowerLimited() {
    return situation.derate() instanceof Derate.PowerLimited;
  }

  /** Percentage points of torque that are cut; 0 when none. */
  double powerCutPercent() {
    return switch (situation.derate()) {
      case Derate.None _ -> 0;
      case Derate.Active active -> active.cutPercent();
      case Derate.PowerLimited limited -> limited.cutPercent();
    };
  }
}
