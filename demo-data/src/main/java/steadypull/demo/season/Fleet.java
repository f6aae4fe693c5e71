package steadypull.demo.season;

import java.util.List;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** The vehicles of the season. Their figures are estimated, as the plant's own are. */
final class Fleet {
  static final List<FleetVehicle> ALL =
      List.of(
          new FleetVehicle(
              "V",
              "Long-wheelbase van 2",
              van(),
              3100,
              3.4,
              "flatbed trailer",
              VehicleBus.CAN,
              true,
              false),
          new FleetVehicle(
              "C",
              "Crew truck 1",
              crewTruck(),
              3900,
              3.2,
              "box trailer",
              VehicleBus.CAN,
              true,
              false),
          new FleetVehicle(
              "F", "Farm wagon 3", wagon(), 2350, 2.7, "stock trailer", VehicleBus.CAN, true, true),
          new FleetVehicle(
              "T", "Tipper 4", tipper(), 5200, 4.2, "plant trailer", VehicleBus.CAN, false, false),
          new FleetVehicle(
              "M", "Motorhome 5", motorhome(), 3500, 4.4, "", VehicleBus.K_LINE, true, false),
          new FleetVehicle(
              "R",
              "Recovery truck 6",
              recovery(),
              6100,
              5.2,
              "loaded low trailer",
              VehicleBus.CAN,
              true,
              false));

  private Fleet() {}

  static FleetVehicle of(String key) {
    return ALL.stream()
        .filter(each -> each.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("No vehicle has the letter " + key));
  }

  private static Rig van() {
    return Rig.usual()
        .with(RigTrait.DISPLACEMENT_L, 3.2)
        .with(RigTrait.PEAK_TORQUE_NM, 425)
        .with(RigTrait.REFERENCE_TORQUE_NM, 520)
        .with(RigTrait.MASS_KG, 5600)
        .with(RigTrait.CHARGE_COOLER_W_PER_K, 600)
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, 4.4)
        .with(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K, 1500)
        .with(RigTrait.CHARGE_PUMP_L_PER_MIN, 9)
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, 150)
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, 130_000)
        .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 108)
        .with(RigTrait.DERATE_SHARE_PER_K, 0.02);
  }

  private static Rig crewTruck() {
    return Rig.usual().with(RigTrait.MASS_KG, 7600).with(RigTrait.DERATE_CHARGE_AIR_DEGC, 97);
  }

  private static Rig wagon() {
    return Rig.usual()
        .cooledBy(Rig.Cooling.AIR_TO_AIR)
        .with(RigTrait.DISPLACEMENT_L, 2.8)
        .with(RigTrait.PEAK_TORQUE_NM, 330)
        .with(RigTrait.REFERENCE_TORQUE_NM, 420)
        .with(RigTrait.MASS_KG, 5000)
        .with(RigTrait.DRAG_AREA_M2, 3.3)
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, 105_000)
        .with(RigTrait.CHARGE_COOLER_W_PER_K, 112)
        .with(RigTrait.AIR_CONDITIONING_W, 0)
        .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 75);
  }

  private static Rig tipper() {
    return Rig.usual()
        .with(RigTrait.MASS_KG, 8300)
        .with(RigTrait.DRAG_AREA_M2, 5)
        .with(RigTrait.AXLE_RATIO, 4.1)
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, 7);
  }

  private static Rig motorhome() {
    return Rig.usual()
        .cooledBy(Rig.Cooling.AIR_TO_AIR)
        .with(RigTrait.DISPLACEMENT_L, 2.3)
        .with(RigTrait.PEAK_TORQUE_NM, 350)
        .with(RigTrait.REFERENCE_TORQUE_NM, 430)
        .with(RigTrait.MASS_KG, 3500)
        .with(RigTrait.DRAG_AREA_M2, 4.4)
        .with(RigTrait.TYRE_RADIUS_M, 0.35)
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, 95_000)
        .with(RigTrait.CHARGE_COOLER_W_PER_K, 220)
        .with(RigTrait.HIGHEST_MANIFOLD_KPA, 250);
  }

  private static Rig recovery() {
    return Rig.usual()
        .with(RigTrait.DISPLACEMENT_L, 6.6)
        .with(RigTrait.PEAK_TORQUE_NM, 900)
        .with(RigTrait.REFERENCE_TORQUE_NM, 1040)
        .with(RigTrait.MASS_KG, 11_800)
        .with(RigTrait.DRAG_AREA_M2, 6)
        .with(RigTrait.TYRE_RADIUS_M, 0.42)
        .with(RigTrait.AXLE_RATIO, 4.1)
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, 210_000)
        .with(RigTrait.ENGINE_RADIATOR_W_PER_K, 2500)
        .with(RigTrait.CHARGE_COOLER_W_PER_K, 820)
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, 9.5)
        .with(RigTrait.CHARGE_PUMP_L_PER_MIN, 24)
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, 330);
  }
}
