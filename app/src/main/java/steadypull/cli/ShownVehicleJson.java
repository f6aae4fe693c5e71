package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.review.HeatTrend;
import steadypull.review.LearntLimit;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.LearntQuantity;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** A vehicle for machines, with what its trips have taught. Keys are stable; more may be added. */
final class ShownVehicleJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** From the median to the 95 % quantile of a normal distribution, in standard deviations. */
  private static final double NINETY_FIVE_PERCENT = 1.645;

  private ShownVehicleJson() {}

  /**
   * A vehicle.
   *
   * @param lessons of its trips, in the order in which they began
   */
  static String of(Vehicle vehicle, List<LessonOfTrip> lessons) {
    ObjectNode node = JSON.createObjectNode();
    node.put("name", vehicle.name());
    node.put("layout", vehicle.layout().word());
    node.putArray("advisable_speed_km_h")
        .add(vehicle.speeds().lowestKilometresPerHour())
        .add(vehicle.speeds().highestKilometresPerHour());
    ArrayNode limits = node.putArray("limits");
    vehicle.limits().values().forEach(limit -> describe(limit, limits.addObject()));
    ObjectNode cap = node.putObject("coolant_cap");
    cap.put("bar", vehicle.cap().bar());
    describe(vehicle.cap().provenance(), cap);
    describe(vehicle.rig(), node.putObject("rig"));
    ArrayNode roles = node.putArray("sensor_roles");
    vehicle
        .sources()
        .forEach(
            source ->
                roles
                    .addObject()
                    .put("channel", source.channelId())
                    .put("signal", source.signalKey()));
    ArrayNode configurations = node.putArray("configurations");
    vehicle.configurations().forEach(each -> describe(each, configurations.addObject()));
    ArrayNode trends = node.putArray("trends");
    HeatTrendText.trends(vehicle, lessons).forEach(each -> describe(each, trends.addObject()));
    ArrayNode proposals = node.putArray("limit_proposals");
    LearntLimit.of(vehicle, lessons).forEach(each -> describe(each, proposals.addObject()));
    return node.toString();
  }

  private static void describe(Limit limit, ObjectNode node) {
    node.put("channel", limit.channel().id());
    node.put("limit_degC", limit.celsius());
    describe(limit.provenance(), node);
  }

  private static void describe(Provenance provenance, ObjectNode node) {
    node.put("provenance", provenance.kind().word());
    node.put("note", provenance.note());
    node.put("confirmed", provenance.kind() != Provenance.Kind.DEFAULT);
  }

  private static void describe(Rig rig, ObjectNode node) {
    put(node, "mass_kg", rig.massKilograms());
    put(node, "trailer_mass_kg", rig.trailerMassKilograms());
    put(node, "drag_area_m2", rig.dragAreaSquareMetres());
    put(node, "rolling_resistance", rig.rollingResistance());
    put(node, "tyre_radius_m", rig.tyreRadiusMetres());
  }

  private static void put(ObjectNode node, String key, OptionalDouble value) {
    value.ifPresent(number -> node.put(key, number));
  }

  private static void describe(Configuration configuration, ObjectNode node) {
    node.put("fitted", configuration.fitted());
    node.put("since", configuration.since().toString());
    ArrayNode touched = node.putArray("touched");
    configuration.touched().stream().map(Circuit::word).forEach(touched::add);
    ObjectNode learnt = node.putObject("learnt");
    configuration
        .learnt()
        .quantities()
        .forEach(each -> describe(each, learnt.putObject(each.quantity().id())));
  }

  private static void describe(LearntQuantity learnt, ObjectNode node) {
    double apart = NINETY_FIVE_PERCENT * learnt.spread();
    node.put("p05", learnt.quantity().physical(learnt.mean() - apart));
    node.put("p50", learnt.quantity().physical(learnt.mean()));
    node.put("p95", learnt.quantity().physical(learnt.mean() + apart));
    node.put("trips", learnt.trips());
    node.put("loaded_h", learnt.loadedHours());
  }

  private static void describe(HeatTrend trend, ObjectNode node) {
    node.put("quantity", trend.quantityId());
    node.put("since", trend.first().toString());
    node.put("trips", trend.trips());
    ObjectNode change = node.putObject("change_pct");
    change.put("p05", 100 * trend.p05());
    change.put("p50", 100 * trend.p50());
    change.put("p95", 100 * trend.p95());
    node.put("falling", trend.isFall());
  }

  private static void describe(LearntLimit learnt, ObjectNode node) {
    node.put("channel", learnt.entered().channel().id());
    node.put("entered_degC", learnt.entered().celsius());
    learnt.proposal().ifPresent(limit -> node.put("proposed_degC", limit.celsius()));
    ArrayNode began = node.putArray("began_degC");
    learnt.celsius().forEach(began::add);
    node.put("trips", learnt.trips());
    node.put("unclear", learnt.unclear());
  }
}
