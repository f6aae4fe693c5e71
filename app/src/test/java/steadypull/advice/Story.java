package steadypull.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.Vehicle;

/** A drive told second by second. */
final class Story {
  static final RuleSet SHIPPED = RuleSet.shipped();
  static final double CHARGE_AIR_LIMIT = 105;
  static final double COOLANT_LIMIT = 112;

  final Advisor advisor;
  final List<AdviceEvent> told = new ArrayList<>();
  private int second;

  Story() {
    this(SHIPPED, Locale.ENGLISH, UnitSystem.METRIC);
  }

  Story(RuleSet rules, Locale locale, UnitSystem units) {
    this(vehicle(SpeedRange.DEFAULT), rules, locale, units);
  }

  Story(Vehicle vehicle, RuleSet rules, Locale locale, UnitSystem units) {
    advisor = new Advisor(vehicle, rules, locale, units);
  }

  static Vehicle vehicle(SpeedRange speeds) {
    return vehicle(speeds, Provenance.Kind.WORKSHOP);
  }

  /** A vehicle whose limits are nobody's but the program's. */
  static Vehicle unconfirmed() {
    return vehicle(SpeedRange.DEFAULT, Provenance.Kind.DEFAULT);
  }

  private static Vehicle vehicle(SpeedRange speeds, Provenance.Kind kind) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    limit(limits, Channels.ENGINE_COOLANT_TEMP, COOLANT_LIMIT, kind);
    limit(limits, Channels.CHARGE_COOLANT_TEMP, 100, kind);
    limit(limits, Channels.CHARGE_AIR_TEMP_OUT, CHARGE_AIR_LIMIT, kind);
    limit(limits, Channels.ENGINE_OIL_TEMP, 130, kind);
    limit(limits, Channels.TRANSMISSION_FLUID_TEMP, 120, kind);
    limit(limits, Channels.EXHAUST_TEMP_BEFORE_TURBINE, 720, kind);
    return new Vehicle(
        "Invented",
        CoolingLayout.WATER_TO_AIR,
        limits,
        Rig.unknown(),
        Driveline.unknown(),
        speeds,
        List.of(),
        List.of());
  }

  private static void limit(
      Map<String, Limit> limits, Channel channel, double celsius, Provenance.Kind kind) {
    limits.put(channel.id(), new Limit(channel, celsius, new Provenance(kind, "invented")));
  }

  /** Seconds told so far; the next situation has this time. */
  int second() {
    return second;
  }

  /** The time of the last situation told. */
  long nowMicros() {
    return (second - 1) * 1_000_000L;
  }

  /** Lets a situation last; returns only what happened meanwhile. */
  List<AdviceEvent> lasts(int seconds, SituationDraft draft) {
    List<AdviceEvent> now = new ArrayList<>();
    for (int count = 0; count < seconds; count++) {
      now.addAll(advisor.step(draft.at(second++)));
    }
    told.addAll(now);
    return now;
  }

  AdviceLine line() {
    return advisor.line();
  }

  /**
   * Kind and rule of events, such as {@code raised coolant-over-limit}; what became of advice is
   * left aside.
   */
  static List<String> words(List<AdviceEvent> events) {
    return events.stream()
        .filter(each -> !each.kind().word().startsWith("advice-"))
        .map(each -> (each.kind().word() + " " + each.rule().orElse("")).strip())
        .toList();
  }
}
