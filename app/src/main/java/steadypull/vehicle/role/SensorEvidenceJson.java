package steadypull.vehicle.role;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Sensor evidence as JSON text, the form in which a library keeps it. Stateless. */
public final class SensorEvidenceJson {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String VERSION_KEY = "steadypull_sensor_evidence";
  private static final int VERSION = 1;

  private SensorEvidenceJson() {}

  /** The evidence as text; read back it equals the given one. */
  public static String write(SensorEvidence evidence) {
    ObjectNode root = JSON.createObjectNode().put(VERSION_KEY, VERSION);
    ObjectNode sensors = root.putObject("sensors");
    evidence.sensors().forEach((key, sensor) -> write(sensor, sensors.putObject(key)));
    return root.toString();
  }

  private static void write(SensorRecord sensor, ObjectNode node) {
    node.put("lowest_degC", sensor.lowest()).put("highest_degC", sensor.highest());
    sensor.soakKelvin().ifPresent(kelvin -> node.put("after_rest_K", kelvin));
    BoostMeans boost = sensor.boost();
    node.putObject("boost")
        .put("seconds", boost.seconds())
        .put("degC", boost.celsius())
        .put("outside_degC", boost.outsideCelsius())
        .put("manifold_kPa", boost.manifoldKilopascals())
        .put("compression_K", boost.compressionKelvin());
    BoostTrend trend = sensor.trend();
    node.putObject("trend")
        .put("seconds", trend.seconds())
        .put("manifold_kPa", trend.pressure())
        .put("rise_K", trend.rise())
        .put("manifold_squares_kPa2", trend.pressureSquares())
        .put("products_K_kPa", trend.products())
        .put("rise_squares_K2", trend.riseSquares())
        .put("quick_squares_K2", trend.quickSquares());
    node.putObject("from_engine_water")
        .put("seconds", sensor.gap().seconds())
        .put("apart_K", sensor.gap().kelvin());
  }

  /**
   * The evidence that a text holds. What cannot be read counts as nothing seen: the next drives see
   * it again, and nothing else depends on it.
   */
  public static SensorEvidence read(String text) {
    try {
      JsonNode root = JSON.readTree(text);
      if (root.path(VERSION_KEY).asInt() != VERSION) {
        return SensorEvidence.none();
      }
      Map<String, SensorRecord> sensors = new TreeMap<>();
      for (Map.Entry<String, JsonNode> each : root.path("sensors").properties()) {
        sensors.put(each.getKey(), sensor(each.getValue()));
      }
      return new SensorEvidence(sensors);
    } catch (JsonProcessingException | IllegalArgumentException damaged) {
      return SensorEvidence.none();
    }
  }

  private static SensorRecord sensor(JsonNode node) {
    return new SensorRecord(
        number(node, "lowest_degC"),
        number(node, "highest_degC"),
        boost(node.path("boost")),
        trend(node.path("trend")),
        gap(node.path("from_engine_water")),
        node.has("after_rest_K")
            ? OptionalDouble.of(number(node, "after_rest_K"))
            : OptionalDouble.empty());
  }

  private static WaterGap gap(JsonNode node) {
    return new WaterGap(number(node, "seconds"), number(node, "apart_K"));
  }

  private static BoostMeans boost(JsonNode node) {
    return new BoostMeans(
        number(node, "seconds"),
        number(node, "degC"),
        number(node, "outside_degC"),
        number(node, "manifold_kPa"),
        number(node, "compression_K"));
  }

  private static BoostTrend trend(JsonNode node) {
    return new BoostTrend(
        number(node, "seconds"),
        number(node, "manifold_kPa"),
        number(node, "rise_K"),
        number(node, "manifold_squares_kPa2"),
        number(node, "products_K_kPa"),
        number(node, "rise_squares_K2"),
        number(node, "quick_squares_K2"));
  }

  private static double number(JsonNode node, String key) {
    JsonNode value = node.path(key);
    if (!value.isNumber() || !Double.isFinite(value.asDouble())) {
      throw new IllegalArgumentException("Expected a number at " + key + ", found " + value);
    }
    return value.asDouble();
  }
}
