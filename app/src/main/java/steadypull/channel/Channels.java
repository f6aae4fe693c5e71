package steadypull.channel;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The channels that every vehicle may have, by their fixed ids. */
public final class Channels {
  private static final Map<String, Channel> BY_ID = new LinkedHashMap<>();

  public static final Channel ENGINE_COOLANT_TEMP = known("engine_coolant_temp", "degC");
  public static final Channel CHARGE_COOLANT_TEMP = known("charge_coolant_temp", "degC");
  public static final Channel CHARGE_AIR_TEMP_IN = known("charge_air_temp_in", "degC");
  public static final Channel CHARGE_AIR_TEMP_OUT = known("charge_air_temp_out", "degC");
  public static final Channel INTAKE_AIR_TEMP = known("intake_air_temp", "degC");
  public static final Channel AMBIENT_AIR_TEMP = known("ambient_air_temp", "degC");
  public static final Channel ENGINE_OIL_TEMP = known("engine_oil_temp", "degC");
  public static final Channel TRANSMISSION_FLUID_TEMP = known("transmission_fluid_temp", "degC");
  public static final Channel EXHAUST_TEMP_BEFORE_TURBINE =
      known("exhaust_temp_before_turbine", "degC");
  public static final Channel EXHAUST_TEMP_AFTER_TURBINE =
      known("exhaust_temp_after_turbine", "degC");
  public static final Channel EXHAUST_TEMP_AFTER_TREATMENT =
      known("exhaust_temp_after_treatment", "degC");
  public static final Channel EXHAUST_GAS_TEMP = known("exhaust_gas_temp", "degC");
  public static final Channel FILTER_REGENERATION = known("filter_regeneration", "1");
  public static final Channel BAROMETRIC_PRESSURE = known("barometric_pressure", "kPa");
  public static final Channel MANIFOLD_PRESSURE = known("manifold_pressure", "kPa");
  public static final Channel AIR_MASS_FLOW = known("air_mass_flow", "g/s");
  public static final Channel ENGINE_SPEED = known("engine_speed", "r/min");
  public static final Channel VEHICLE_SPEED = known("vehicle_speed", "km/h");
  public static final Channel ENGINE_LOAD = known("engine_load", "%");
  public static final Channel ACCELERATOR_PEDAL = known("accelerator_pedal", "%");
  public static final Channel DEMANDED_TORQUE = known("demanded_torque", "%");
  public static final Channel DELIVERED_TORQUE = known("delivered_torque", "%");
  public static final Channel REFERENCE_TORQUE = known("reference_torque", "N.m");
  public static final Channel FUEL_RATE = known("fuel_rate", "L/h");
  public static final Channel GEAR = known("gear", "1");
  public static final Channel MODULE_VOLTAGE = known("module_voltage", "V");
  public static final Channel LATITUDE = known("latitude", "deg");
  public static final Channel LONGITUDE = known("longitude", "deg");
  public static final Channel ALTITUDE = known("altitude", "m");
  public static final Channel ROAD_GRADE = known("road_grade", "%");
  public static final Channel WHEEL_TORQUE = known("wheel_torque", "N.m");
  public static final Channel WHEEL_POWER = known("wheel_power", "kW");

  private static final List<Channel> DERIVED = List.of(ROAD_GRADE, WHEEL_TORQUE, WHEEL_POWER);
  private static final List<Channel> LOCATED = List.of(LATITUDE, LONGITUDE, ALTITUDE);
  private static final List<Channel> THERMAL =
      List.of(
          ENGINE_COOLANT_TEMP,
          CHARGE_COOLANT_TEMP,
          CHARGE_AIR_TEMP_OUT,
          ENGINE_OIL_TEMP,
          TRANSMISSION_FLUID_TEMP,
          EXHAUST_TEMP_BEFORE_TURBINE);

  private Channels() {}

  private static Channel known(String id, String unit) {
    Channel channel = new Channel(id, unit);
    BY_ID.put(id, channel);
    return channel;
  }

  /** The channel of that id, or empty if the id is not one of ours. */
  public static Optional<Channel> find(String id) {
    return Optional.ofNullable(BY_ID.get(id));
  }

  /** Every known channel, in the order of the channel table. */
  public static List<Channel> all() {
    return List.copyOf(BY_ID.values());
  }

  /** Channels computed by the program; those of an imported table are ignored and recomputed. */
  public static List<Channel> derived() {
    return DERIVED;
  }

  /** Channels that a satellite receiver tells and no vehicle does. */
  public static List<Channel> located() {
    return LOCATED;
  }

  /** Channels that can have a thermal limit and a forecast. */
  public static List<Channel> thermal() {
    return THERMAL;
  }
}
