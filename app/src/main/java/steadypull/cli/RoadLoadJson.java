package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import steadypull.road.RoadLoad;
import steadypull.road.load.GradeEquivalent;

/** A load on the road for machines. Keys are stable; more may be added. */
final class RoadLoadJson {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final double KILOMETRES_PER_HOUR = 3.6;

  private RoadLoadJson() {}

  static String of(RoadLoadAnswer answer) {
    ObjectNode node = JSON.createObjectNode();
    describe(answer.equivalent(), node);
    RoadLoad load = answer.equivalent().load();
    node.put("mass_kg", load.massKilograms());
    node.put("drag_area_m2", load.dragAreaSquareMetres());
    node.put("rolling_resistance", load.rollingResistance());
    node.put("air_density_kg_per_m3", rounded(load.airDensity(), 4));
    node.put("wheel_force_N", rounded(answer.equivalent().newtons(), 1));
    node.put("wheel_power_kW", rounded(answer.equivalent().kilowatts(), 2));
    put(node, "wheel_torque_Nm", answer.wheelNewtonMetres());
    put(node, "engine_power_kW", answer.engineKilowatts());
    node.put("driveline_efficiency", answer.efficiency());
    ArrayNode gears = node.putArray("gears");
    answer.gears().forEach(gear -> describe(gear, gears.addObject()));
    ArrayNode same = node.putArray("same_power");
    answer.samePower().forEach(road -> describe(road, same.addObject()));
    answer.assumed().forEach(node.putArray("assumed")::add);
    RoadLoadAnswer.CAUTIONS.forEach(node.putArray("cautions")::add);
    return node.toString();
  }

  private static void describe(GradeEquivalent road, ObjectNode node) {
    node.put("speed_km_h", rounded(road.metresPerSecond() * KILOMETRES_PER_HOUR, 3));
    node.put("grade_pct", rounded(road.grade() * 100, 3));
  }

  private static void describe(RoadLoadAnswer.Gear gear, ObjectNode node) {
    node.put("gear", gear.number());
    node.put("engine_speed_r_min", rounded(gear.engine().rpm(), 1));
    node.put("engine_torque_Nm", rounded(gear.engine().newtonMetres(), 1));
  }

  private static void put(ObjectNode node, String key, OptionalDouble value) {
    value.ifPresent(number -> node.put(key, rounded(number, 2)));
  }

  private static double rounded(double value, int decimals) {
    double factor = Math.pow(10, decimals);
    return Math.round(value * factor) / factor;
  }
}
