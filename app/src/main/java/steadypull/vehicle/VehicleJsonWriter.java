package steadypull.vehicle;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Writes a vehicle as JSON text, keys in a fixed order, what is unknown left out. */
final class VehicleJsonWriter {
  private static final ObjectWriter WRITER =
      new ObjectMapper()
          .writer(new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n")));

  private VehicleJsonWriter() {}

  static String write(Vehicle vehicle, int version) {
    try {
      return WRITER.writeValueAsString(vehicle(vehicle, version)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("Maps, lists, texts and numbers are always JSON", e);
    }
  }

  private static Map<String, Object> vehicle(Vehicle vehicle, int version) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("steadypull_vehicle", version);
    fields.put("name", vehicle.name());
    fields.put("layout", vehicle.layout().word());
    fields.put("limits", vehicle.limits().values().stream().map(VehicleJsonWriter::limit).toList());
    fields.put("rig", rig(vehicle.rig()));
    fields.put("driveline", driveline(vehicle.driveline()));
    fields.put(
        "advisable_speed_km_h",
        List.of(
            number(vehicle.speeds().lowestKilometresPerHour()),
            number(vehicle.speeds().highestKilometresPerHour())));
    fields.put("sensor_roles", vehicle.sources().stream().map(VehicleJsonWriter::role).toList());
    fields.put("signals", vehicle.signals().stream().map(VehicleJsonWriter::signal).toList());
    if (!vehicle.configurations().isEmpty()) {
      fields.put("configurations", HeatJson.fields(vehicle.configurations()));
    }
    if (!vehicle.cap().equals(PressureCap.USUAL)) {
      fields.put("coolant_cap", cap(vehicle.cap()));
    }
    return fields;
  }

  private static Map<String, Object> cap(PressureCap cap) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("bar", number(cap.bar()));
    fields.put("provenance", cap.provenance().kind().word());
    fields.put("note", cap.provenance().note());
    return fields;
  }

  private static Map<String, Object> limit(Limit limit) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("channel", limit.channel().id());
    fields.put("limit_degC", number(limit.celsius()));
    fields.put("provenance", limit.provenance().kind().word());
    fields.put("note", limit.provenance().note());
    return fields;
  }

  private static Map<String, Object> rig(Rig rig) {
    Map<String, Object> fields = new LinkedHashMap<>();
    putIfKnown(fields, "mass_kg", rig.massKilograms());
    putIfKnown(fields, "trailer_mass_kg", rig.trailerMassKilograms());
    putIfKnown(fields, "drag_area_m2", rig.dragAreaSquareMetres());
    putIfKnown(fields, "rolling_resistance", rig.rollingResistance());
    putIfKnown(fields, "tyre_radius_m", rig.tyreRadiusMetres());
    return fields;
  }

  private static Map<String, Object> driveline(Driveline driveline) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put(
        "gear_ratios", driveline.gearRatios().stream().map(VehicleJsonWriter::number).toList());
    putIfKnown(fields, "axle_ratio", driveline.axleRatio());
    putIfKnown(fields, "rated_engine_speed_r_min", driveline.ratedEngineSpeed());
    driveline.tyreSize().ifPresent(size -> fields.put("tyre_size", size.designation()));
    return fields;
  }

  private static Map<String, Object> role(SignalSource source) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("channel", source.channelId());
    fields.put("signal", source.signalKey());
    return fields;
  }

  private static Map<String, Object> signal(VehicleSignal signal) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("channel", signal.channelId());
    fields.put("identifier", String.format(Locale.ROOT, "%04X", signal.identifier()));
    fields.put("header", signal.header());
    fields.put("first_bit", signal.firstBit());
    fields.put("bit_length", signal.bitLength());
    fields.put("signed", signal.signed());
    fields.put("scale", number(signal.scale()));
    fields.put("offset", number(signal.offset()));
    fields.put("unit", signal.unit());
    fields.put("range", List.of(number(signal.lowest()), number(signal.highest())));
    return fields;
  }

  private static void putIfKnown(Map<String, Object> fields, String key, OptionalDouble value) {
    if (value.isPresent()) {
      fields.put(key, number(value.getAsDouble()));
    }
  }

  /** Whole numbers without a fraction: 105, not 105.0. */
  private static Number number(double value) {
    if (value == Math.rint(value) && Math.abs(value) < 1e15) {
      return (long) value;
    }
    return value;
  }
}
