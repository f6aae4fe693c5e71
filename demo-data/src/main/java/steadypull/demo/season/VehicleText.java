package steadypull.demo.season;

import java.util.Locale;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** Writes vehicles and rigs as JSON, as they stand in the program's vehicle files. */
final class VehicleText {
  private VehicleText() {}

  /** The vehicle with its usual trailer. */
  static String vehicle(FleetVehicle vehicle) {
    Rig rig = vehicle.rig();
    return """
    {
      "steadypull_vehicle": 1,
      "name": "%s",
      "layout": "%s",
      "limits": [
    %s
      ],
      "rig": %s,
      "driveline": {"gear_ratios": %s, "axle_ratio": %s, "rated_engine_speed_r_min": 3300},
      "advisable_speed_km_h": [60, 90],
      "sensor_roles": [%s],
      "signals": [%s]
    }
    """
        .formatted(
            vehicle.name(),
            isWaterCooled(rig) ? "water-to-air" : "air-to-air",
            limits(rig),
            rig(rig, vehicle.soloKilograms()),
            rig.gearRatios(),
            number(rig.of(RigTrait.AXLE_RATIO)),
            roles(vehicle),
            signals(vehicle));
  }

  /** What the vehicle moves, and what of that is its trailer. */
  static String rig(Rig rig, double soloKilograms) {
    return "{\"mass_kg\": %s, \"trailer_mass_kg\": %s, \"drag_area_m2\": %s, \"rolling_resistance\": %s, \"tyre_radius_m\": %s}"
        .formatted(
            number(rig.of(RigTrait.MASS_KG)),
            number(rig.of(RigTrait.MASS_KG) - soloKilograms),
            number(rig.of(RigTrait.DRAG_AREA_M2)),
            number(rig.of(RigTrait.ROLLING_RESISTANCE)),
            number(rig.of(RigTrait.TYRE_RADIUS_M)));
  }

  private static String limits(Rig rig) {
    String air = limit("charge_air_temp_out", rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC), "maker");
    String water = isWaterCooled(rig) ? limit("charge_coolant_temp", 100, "default") + ",\n" : "";
    return air
        + ",\n"
        + water
        + limit("engine_coolant_temp", rig.of(RigTrait.DERATE_ENGINE_COOLANT_DEGC), "maker")
        + ",\n"
        + limit("engine_oil_temp", 130, "default")
        + ",\n"
        + limit("transmission_fluid_temp", 120, "workshop");
  }

  private static String limit(String channel, double celsius, String provenance) {
    String note = provenance.equals("default") ? "" : "invented " + provenance + "'s figure";
    return "    {\"channel\": \"%s\", \"limit_degC\": %s, \"provenance\": \"%s\", \"note\": \"%s\"}"
        .formatted(channel, number(celsius), provenance, note);
  }

  private static String roles(FleetVehicle vehicle) {
    return switch (vehicle.bus()) {
      case CAN ->
          (isWaterCooled(vehicle.rig()) ? role("charge_coolant_temp", "01.67.2") + ", " : "")
              + role("charge_air_temp_in", "01.75.2")
              + ", "
              + role("charge_air_temp_out", "01.77.1")
              + ", "
              + role("exhaust_temp_before_turbine", "01.78.1")
              + ", "
              + role("exhaust_temp_after_turbine", "01.78.2");
      case K_LINE -> "";
    };
  }

  private static String role(String channel, String signal) {
    return "{\"channel\": \"%s\", \"signal\": \"%s\"}".formatted(channel, signal);
  }

  private static String signals(FleetVehicle vehicle) {
    return switch (vehicle.bus()) {
      case CAN ->
          "{\"channel\": \"transmission_fluid_temp\", \"identifier\": \"1E1C\", \"header\":"
              + " \"7E1\", \"first_bit\": 0, \"bit_length\": 16, \"signed\": false, \"scale\":"
              + " 0.0625, \"offset\": -40, \"unit\": \"degC\", \"range\": [-40, 215]}";
      case K_LINE -> "";
    };
  }

  private static boolean isWaterCooled(Rig rig) {
    return rig.cooling() == Rig.Cooling.WATER_TO_AIR;
  }

  /** Without a needless fraction. */
  private static String number(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : Double.toString(value);
  }
}
