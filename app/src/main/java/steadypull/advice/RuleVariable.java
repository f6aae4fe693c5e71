package steadypull.advice;

import dev.cel.common.types.CelType;
import dev.cel.common.types.SimpleType;
import java.util.Arrays;
import java.util.List;

/**
 * The quantities that a rule's condition may name. The head of rules.toml lists them for people.
 */
enum RuleVariable {
  VALUE("value", Scope.CHANNEL, SimpleType.DOUBLE),
  LIMIT("limit", Scope.CHANNEL, SimpleType.DOUBLE),
  HEADROOM("headroom", Scope.CHANNEL, SimpleType.DOUBLE),
  PROBABILITY_180("probability_180s", Scope.CHANNEL, SimpleType.DOUBLE),
  PROBABILITY_600("probability_600s", Scope.CHANNEL, SimpleType.DOUBLE),
  PROBABILITY_IN_TIME("probability_in_time", Scope.CHANNEL, SimpleType.DOUBLE),
  SECONDS_TO_LIMIT("seconds_to_limit", Scope.CHANNEL, SimpleType.DOUBLE),
  SECONDS_TO_LIMIT_P10("seconds_to_limit_p10", Scope.CHANNEL, SimpleType.DOUBLE),
  SECONDS_TO_LIMIT_P90("seconds_to_limit_p90", Scope.CHANNEL, SimpleType.DOUBLE),
  SETTLES_AT("settles_at", Scope.CHANNEL, SimpleType.DOUBLE),
  BREAKS("breaks", Scope.CHANNEL, SimpleType.BOOL),
  DERATING("derating", Scope.CHANNEL, SimpleType.BOOL),
  RISES_60("rises_degC_60s", Scope.CHANNEL, SimpleType.DOUBLE),
  FALLS_30("falls_degC_30s", Scope.CHANNEL, SimpleType.DOUBLE),
  SECONDS_UNHEARD("seconds_unheard", Scope.CHANNEL, SimpleType.DOUBLE),
  SECONDS_SINCE_OVER("seconds_since_over", Scope.CHANNEL, SimpleType.DOUBLE),
  LIMIT_UNCONFIRMED("limit_unconfirmed", Scope.CHANNEL, SimpleType.BOOL),
  WARNED("warned", Scope.CHANNEL, SimpleType.BOOL),
  ROAD_KNOWN("road_known", Scope.VEHICLE, SimpleType.BOOL),
  POWER_LIMITED("power_limited", Scope.VEHICLE, SimpleType.BOOL),
  POWER_CUT("power_cut_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  STORED_CODES("stored_codes", Scope.VEHICLE, SimpleType.DOUBLE),
  SECONDS_SINCE_NEW_CODE("seconds_since_new_code", Scope.VEHICLE, SimpleType.DOUBLE),
  SECONDS_SILENT("seconds_silent", Scope.VEHICLE, SimpleType.DOUBLE),
  SECONDS_RUNNING("seconds_running", Scope.VEHICLE, SimpleType.DOUBLE),
  SECONDS_STANDING("seconds_standing", Scope.VEHICLE, SimpleType.DOUBLE),
  HARD_PULL_SECONDS("hard_pull_seconds", Scope.VEHICLE, SimpleType.DOUBLE),
  CHARGE_AIR_ABOVE_COOLANT("charge_air_above_coolant_degC", Scope.VEHICLE, SimpleType.DOUBLE),
  CLIMB_METRES("climb_ahead_m", Scope.VEHICLE, SimpleType.DOUBLE),
  CLIMB_GRADE("climb_ahead_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  COOLER_FALL("cooler_fall_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  FAN_SPEED("fan_speed_rpm", Scope.VEHICLE, SimpleType.DOUBLE),
  SPEED("speed_km_h", Scope.VEHICLE, SimpleType.DOUBLE),
  GRADE("grade_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  ENGINE_SPEED("engine_speed_rpm", Scope.VEHICLE, SimpleType.DOUBLE),
  ENGINE_LOAD("engine_load_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  PEDAL("pedal_percent", Scope.VEHICLE, SimpleType.DOUBLE),
  AMBIENT("ambient_celsius", Scope.VEHICLE, SimpleType.DOUBLE),
  VOLTAGE("module_voltage", Scope.VEHICLE, SimpleType.DOUBLE);

  /** Whether a quantity belongs to the watched channel or to the whole vehicle. */
  enum Scope {
    CHANNEL,
    VEHICLE
  }

  private final String id;
  private final Scope scope;
  private final CelType type;

  RuleVariable(String id, Scope scope, CelType type) {
    this.id = id;
    this.scope = scope;
    this.type = type;
  }

  String id() {
    return id;
  }

  CelType type() {
    return type;
  }

  /**
   * What a rule may name: everything if it watches channels, else only the vehicle's quantities.
   */
  static List<RuleVariable> namedBy(boolean watchesChannels) {
    return Arrays.stream(values())
        .filter(each -> watchesChannels || each.scope == Scope.VEHICLE)
        .toList();
  }
}
