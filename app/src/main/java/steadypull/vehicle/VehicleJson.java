package steadypull.vehicle;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * A vehicle and a rig as JSON text, the form in which they travel and are kept. Reading refuses
 * unknown keys, so that a slip of the pen never goes unnoticed. Stateless.
 */
public final class VehicleJson {
  private static final int VERSION = 1;

  private VehicleJson() {}

  /** The vehicle as JSON text, ending with a line feed; read back it equals the given one. */
  public static String write(Vehicle vehicle) {
    return VehicleJsonWriter.write(vehicle, VERSION);
  }

  /**
   * The vehicle that a text describes. Without {@code limits} it gets the cautious defaults of its
   * layout.
   *
   * @param file name that messages show
   */
  public static Vehicle read(String text, String file) throws VehicleFileException {
    JsonObjectReader root = JsonObjectReader.ofFile(text, file);
    requireVersion(root);
    root.allowOnly(
        "steadypull_vehicle",
        "name",
        "layout",
        "limits",
        "rig",
        "driveline",
        "advisable_speed_km_h",
        "sensor_roles",
        "signals",
        "configurations",
        "coolant_cap");
    CoolingLayout layout = layout(root);
    String name = root.text("name");
    Map<String, Limit> limits = root.has("limits") ? limits(root) : DefaultLimits.of(layout);
    Rig rig = rig(root.object("rig").orElse(null));
    Driveline driveline = driveline(root.object("driveline").orElse(null));
    SpeedRange speeds = speeds(root);
    List<SignalSource> sources = sources(root);
    List<VehicleSignal> signals = signals(root);
    List<Configuration> configurations = HeatJson.configurations(root);
    PressureCap cap = cap(root.object("coolant_cap").orElse(null));
    return root.build(
        () ->
            new Vehicle(name, layout, limits, rig, driveline, speeds, sources, signals)
                .withConfigurations(configurations)
                .withCap(cap));
  }

  /**
   * The rig that a text describes: {@code mass_kg, trailer_mass_kg, drag_area_m2,
   * rolling_resistance, tyre_radius_m}, all optional.
   *
   * @param file name that messages show
   */
  public static Rig readRig(String text, String file) throws VehicleFileException {
    return rig(JsonObjectReader.ofFile(text, file));
  }

  private static void requireVersion(JsonObjectReader root) throws VehicleFileException {
    if (!root.has("steadypull_vehicle") || root.number("steadypull_vehicle") != VERSION) {
      throw root.unexpected("steadypull_vehicle", VERSION + ", the version of a vehicle file");
    }
  }

  private static CoolingLayout layout(JsonObjectReader root) throws VehicleFileException {
    return CoolingLayout.of(root.text("layout"))
        .orElseThrow(() -> root.unexpected("layout", "\"air-to-air\" or \"water-to-air\""));
  }

  private static Map<String, Limit> limits(JsonObjectReader root) throws VehicleFileException {
    Map<String, Limit> limits = new LinkedHashMap<>();
    for (JsonObjectReader object : root.objects("limits")) {
      Limit limit = limit(object);
      if (limits.put(limit.channel().id(), limit) != null) {
        throw object.unexpected("channel", "one limit for each channel");
      }
    }
    return limits;
  }

  private static Limit limit(JsonObjectReader object) throws VehicleFileException {
    object.allowOnly("channel", "limit_degC", "provenance", "note");
    String id = object.text("channel");
    double celsius = object.number("limit_degC");
    Provenance provenance = provenance(object);
    return object.build(() -> new Limit(temperature(id), celsius, provenance));
  }

  private static Provenance provenance(JsonObjectReader object) throws VehicleFileException {
    Provenance.Kind kind =
        Provenance.Kind.of(object.text("provenance"))
            .orElseThrow(
                () ->
                    object.unexpected(
                        "provenance",
                        "\"maker\", \"workshop\", \"owner\", \"learnt\" or \"default\""));
    return new Provenance(kind, object.textOr("note", ""));
  }

  private static PressureCap cap(@Nullable JsonObjectReader object) throws VehicleFileException {
    if (object == null) {
      return PressureCap.USUAL;
    }
    object.allowOnly("bar", "provenance", "note");
    double bar = object.number("bar");
    Provenance provenance = provenance(object);
    return object.build(() -> new PressureCap(bar, provenance));
  }

  private static Channel temperature(String id) {
    return Channels.find(id).orElseGet(() -> new Channel(id, "degC"));
  }

  private static Rig rig(@Nullable JsonObjectReader object) throws VehicleFileException {
    if (object == null) {
      return Rig.unknown();
    }
    object.allowOnly(
        "mass_kg", "trailer_mass_kg", "drag_area_m2", "rolling_resistance", "tyre_radius_m");
    return object.build(
        () ->
            new Rig(
                object.optionalNumber("mass_kg"),
                object.optionalNumber("trailer_mass_kg"),
                object.optionalNumber("drag_area_m2"),
                object.optionalNumber("rolling_resistance"),
                object.optionalNumber("tyre_radius_m")));
  }

  private static Driveline driveline(@Nullable JsonObjectReader object)
      throws VehicleFileException {
    if (object == null) {
      return Driveline.unknown();
    }
    object.allowOnly("gear_ratios", "axle_ratio", "rated_engine_speed_r_min", "tyre_size");
    return object.build(
        () ->
            new Driveline(
                object.numbers("gear_ratios"),
                object.optionalNumber("axle_ratio"),
                object.optionalNumber("rated_engine_speed_r_min"),
                object.has("tyre_size")
                    ? Optional.of(TyreSize.of(object.text("tyre_size")))
                    : Optional.empty()));
  }

  private static SpeedRange speeds(JsonObjectReader root) throws VehicleFileException {
    if (!root.has("advisable_speed_km_h")) {
      return SpeedRange.DEFAULT;
    }
    List<Double> pair = pair(root, "advisable_speed_km_h");
    return root.build(() -> new SpeedRange(pair.getFirst(), pair.getLast()));
  }

  private static List<SignalSource> sources(JsonObjectReader root) throws VehicleFileException {
    List<SignalSource> sources = new ArrayList<>();
    Set<String> fed = new HashSet<>();
    for (JsonObjectReader object : root.objects("sensor_roles")) {
      object.allowOnly("channel", "signal");
      String channel = object.text("channel");
      if (!fed.add(channel)) {
        throw object.unexpected("channel", "one sensor role for each channel");
      }
      sources.add(object.build(() -> new SignalSource(channel, object.text("signal"))));
    }
    return sources;
  }

  private static List<VehicleSignal> signals(JsonObjectReader root) throws VehicleFileException {
    List<VehicleSignal> signals = new ArrayList<>();
    for (JsonObjectReader object : root.objects("signals")) {
      signals.add(signal(object));
    }
    return signals;
  }

  private static VehicleSignal signal(JsonObjectReader object) throws VehicleFileException {
    object.allowOnly(
        "channel",
        "identifier",
        "header",
        "first_bit",
        "bit_length",
        "signed",
        "scale",
        "offset",
        "unit",
        "range");
    List<Double> range = pair(object, "range");
    return object.build(
        () ->
            new VehicleSignal(
                object.text("channel"),
                identifier(object),
                object.text("header"),
                object.wholeNumber("first_bit"),
                object.wholeNumber("bit_length"),
                object.flag("signed"),
                object.number("scale"),
                object.number("offset"),
                object.text("unit"),
                range.getFirst(),
                range.getLast()));
  }

  private static int identifier(JsonObjectReader object) throws VehicleFileException {
    String text = object.text("identifier");
    if (!text.matches("[0-9A-Fa-f]{4}")) {
      throw object.unexpected("identifier", "four hex digits such as \"1E1C\"");
    }
    return Integer.parseInt(text, 16);
  }

  private static List<Double> pair(JsonObjectReader object, String key)
      throws VehicleFileException {
    List<Double> numbers = object.numbers(key);
    if (numbers.size() != 2) {
      throw object.unexpected(key, "a list of two numbers, lowest first");
    }
    return numbers;
  }
}
