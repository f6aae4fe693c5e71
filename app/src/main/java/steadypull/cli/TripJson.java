package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.drive.AdviceRecord;
import steadypull.drive.WholeTrip;
import steadypull.road.load.Interval;
import steadypull.road.load.RigFinding;
import steadypull.store.LostPart;
import steadypull.store.TripDamage;
import steadypull.store.TripDetails;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/** Trips for machines. Keys are stable; more may be added. */
final class TripJson {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final double MICROS_PER_SECOND = 1e6;

  private TripJson() {}

  /** A list. */
  static String of(List<TripSummary> trips) {
    ArrayNode array = JSON.createArrayNode();
    trips.forEach(trip -> describe(trip, array.addObject()));
    return array.toString();
  }

  /** One trip in full, with what cannot be read and what it tells of the rig. */
  static String of(WholeTrip trip, TripDamage damage, RigFinding weighed) {
    ObjectNode node = JSON.createObjectNode();
    describe(trip.summary(), node);
    describeMore(trip.summary(), node);
    ArrayNode damaged = node.putArray("damaged");
    damage.parts().forEach(part -> describe(part, damaged.addObject()));
    describe(trip.rig(), node.putObject("rig"));
    describe(weighed, node);
    ArrayNode marks = node.putArray("marks");
    trip.marks().forEach(mark -> describe(mark, marks.addObject()));
    ObjectNode events = node.putObject("events");
    for (Map.Entry<TripEvent.Kind, Long> count : trip.eventCounts().entrySet()) {
      events.put(count.getKey().word(), count.getValue());
    }
    AdviceRecord advice = trip.advice();
    node.putObject("advice")
        .put("given", advice.given())
        .put("followed", advice.followed())
        .put("held", advice.held());
    return node.toString();
  }

  private static void describe(TripSummary trip, ObjectNode node) {
    node.put("id", trip.id());
    node.put("vehicle", trip.vehicleName());
    node.put("start", DateTimeFormatter.ISO_INSTANT.format(trip.start()));
    node.put("duration_s", trip.durationSeconds());
    trip.distanceMetres()
        .ifPresent(metres -> node.put("distance_m", Math.round(metres * 10) / 10.0));
    node.put("samples", trip.samples());
    ArrayNode channels = node.putArray("channels");
    trip.channels().stream().map(Channel::id).forEach(channels::add);
    ArrayNode gaps = node.putArray("gaps");
    trip.gaps().forEach(gap -> gaps.addArray().add(gap.fromSeconds()).add(gap.toSeconds()));
    node.put("sealed", trip.sealed());
    node.put("label", trip.label());
    node.put("origin", trip.origin());
    ArrayNode tags = node.putArray("tags");
    trip.details().tags().forEach(tags::add);
    node.put("note", trip.details().note());
  }

  private static void describeMore(TripSummary trip, ObjectNode node) {
    TripMoment.local(trip).ifPresent(local -> node.put("start_local", local));
    ArrayNode headers = node.putArray("headers");
    trip.channels().stream().map(Channel::header).forEach(headers::add);
    TripDetails details = trip.details();
    node.put("fitted", details.fitted());
    node.put("outside", details.outside());
    put(node, "outside_degC", details.outsideCelsius());
    node.put("adapter", trip.link().adapter());
    node.put("protocol", trip.link().protocol());
    node.put("vehicle_number_hash", trip.link().vehicleNumberHash());
    node.put("source", trip.source());
    node.put("software_version", trip.softwareVersion());
  }

  private static void describe(Rig rig, ObjectNode node) {
    put(node, "mass_kg", rig.massKilograms());
    put(node, "trailer_mass_kg", rig.trailerMassKilograms());
    put(node, "drag_area_m2", rig.dragAreaSquareMetres());
    put(node, "rolling_resistance", rig.rollingResistance());
    put(node, "tyre_radius_m", rig.tyreRadiusMetres());
  }

  private static void describe(LostPart part, ObjectNode node) {
    node.put("from_s", part.fromSeconds());
    put(node, "to_s", part.toSeconds());
    node.put("samples", part.samples());
    ArrayNode channels = node.putArray("channels");
    part.channels().stream().map(Channel::id).forEach(channels::add);
  }

  private static void describe(RigFinding finding, ObjectNode node) {
    switch (finding) {
      case RigFinding.Weighed weighed -> {
        put(node.putObject("mass_estimate_kg"), weighed.massKilograms(), 1);
        put(node.putObject("drag_area_estimate_m2"), weighed.dragAreaSquareMetres(), 100);
      }
      case RigFinding.CannotTell unknown ->
          node.put("no_mass_estimate", unknown.reason().name().toLowerCase(Locale.ROOT));
    }
  }

  private static void put(ObjectNode node, Interval interval, double steps) {
    node.put("p05", Math.round(interval.p05() * steps) / steps);
    node.put("p50", Math.round(interval.p50() * steps) / steps);
    node.put("p95", Math.round(interval.p95() * steps) / steps);
  }

  private static void describe(TripEvent mark, ObjectNode node) {
    node.put("time_s", mark.timeMicros() / MICROS_PER_SECOND);
    node.put("text", mark.detail());
  }

  private static void put(ObjectNode node, String key, OptionalDouble value) {
    value.ifPresent(number -> node.put(key, number));
  }
}
