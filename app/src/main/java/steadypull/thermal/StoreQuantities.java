package steadypull.thermal;

import java.util.ArrayList;
import java.util.List;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.HeatQuantity;

/**
 * The lasting names of the stores' parameters, under which a vehicle keeps what it has learnt. A
 * parameter that comes to mean something else needs another name here; then what was learnt under
 * the old one is used no more. Stateless.
 */
final class StoreQuantities {
  private StoreQuantities() {}

  /** The quantities of a store, in the order of its balance's parameters. */
  static List<HeatQuantity> of(Store store, HeatBalance balance) {
    List<String> names = names(store);
    List<Parameter> parameters = balance.parameters();
    if (names.size() != parameters.size()) {
      throw new IllegalStateException(
          "%s has %d parameters and %d names".formatted(store, parameters.size(), names.size()));
    }
    List<HeatQuantity> quantities = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      Parameter parameter = parameters.get(i);
      quantities.add(
          new HeatQuantity(
              names.get(i),
              circuit(store),
              parameter.logarithmic(),
              parameter.usualCoordinate(),
              parameter.spread()));
    }
    return quantities;
  }

  private static Circuit circuit(Store store) {
    return switch (store) {
      case CHARGE_INLET -> Circuit.COMPRESSOR;
      case CHARGE_AIR, CHARGE_COOLANT -> Circuit.CHARGE_AIR;
      case ENGINE_COOLANT -> Circuit.ENGINE_COOLANT;
      case ENGINE_OIL -> Circuit.ENGINE_OIL;
      case TRANSMISSION_FLUID -> Circuit.GEARBOX;
      case EXHAUST -> Circuit.EXHAUST;
    };
  }

  private static List<String> names(Store store) {
    return switch (store) {
      case CHARGE_INLET ->
          List.of(
              "charge_inlet.swallowed_L",
              "charge_inlet.compressor_efficiency",
              "charge_inlet.intake_above_outside_K",
              "charge_inlet.lag_s");
      case CHARGE_AIR ->
          List.of(
              "charge_air.transfer_units",
              "charge_air.cold_side_above_sensor_K",
              "charge_air.lag_s",
              "charge_air.flow_power");
      case CHARGE_COOLANT ->
          List.of(
              "charge_coolant.heat_capacity_J_per_K",
              "charge_coolant.conductance_W_per_K",
              "charge_coolant.standing_share",
              "charge_coolant.air_above_outside_K",
              "charge_coolant.sensor_lag_s");
      case ENGINE_COOLANT ->
          List.of(
              "engine_coolant.heat_capacity_J_per_K",
              "engine_coolant.share_of_fuel",
              "engine_coolant.thermostat_opens_degC",
              "engine_coolant.conductance_W_per_K",
              "engine_coolant.fan_share",
              "engine_coolant.fan_begins_degC",
              "engine_coolant.thermostat_span_K");
      case ENGINE_OIL ->
          List.of(
              "engine_oil.above_coolant_K_per_hundred_kW",
              "engine_oil.above_coolant_K",
              "engine_oil.lag_s");
      case TRANSMISSION_FLUID ->
          List.of(
              "transmission_fluid.above_cooling_K_per_hundred_kW",
              "transmission_fluid.coolant_weight",
              "transmission_fluid.lag_s");
      case EXHAUST -> List.of("exhaust.share_of_fuel", "exhaust.base_K", "exhaust.lag_s");
    };
  }
}
