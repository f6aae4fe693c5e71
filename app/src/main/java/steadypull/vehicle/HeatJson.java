package steadypull.vehicle;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What was learnt of a vehicle's heat as JSON text: part of a vehicle's file, and alone for each
 * trip. Numbers come back bit for bit, so that a replay begins as the drive did. Stateless.
 */
public final class HeatJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private HeatJson() {}

  /** What a trip has told, on one line; nothing told is the empty text. */
  public static String write(TripHeat heat) {
    if (heat.equals(TripHeat.NOTHING)) {
      return "";
    }
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("loaded_h", heat.loadedHours());
    fields.put("told", heat.told().stream().map(HeatJson::told).toList());
    fields.put("derates", heat.derates().stream().map(HeatJson::derate).toList());
    return text(fields);
  }

  /**
   * What a text says that a trip has told.
   *
   * @throws VehicleFileException if it is none of ours
   */
  public static TripHeat readTrip(String text) throws VehicleFileException {
    if (text.isEmpty()) {
      return TripHeat.NOTHING;
    }
    JsonObjectReader root = JsonObjectReader.ofFile(text, "what a trip has told");
    root.allowOnly("loaded_h", "told", "derates");
    List<HeatTold> told = new ArrayList<>();
    for (JsonObjectReader object : root.objects("told")) {
      told.add(told(object));
    }
    List<DerateBegun> derates = new ArrayList<>();
    for (JsonObjectReader object : root.objects("derates")) {
      derates.add(derate(object));
    }
    return root.build(() -> new TripHeat(root.number("loaded_h"), told, derates));
  }

  /** What was learnt, on one line; nothing learnt is the empty text. */
  public static String write(LearntHeat learnt) {
    return learnt.quantities().isEmpty() ? "" : text(Map.of("learnt", learnt(learnt)));
  }

  /**
   * What a text says that was learnt.
   *
   * @throws VehicleFileException if it is none of ours
   */
  public static LearntHeat readLearnt(String text) throws VehicleFileException {
    return text.isEmpty()
        ? LearntHeat.NOTHING
        : learnt(JsonObjectReader.ofFile(text, "what was learnt of a vehicle"));
  }

  /** Configurations as lists of a vehicle's file. */
  static List<Map<String, Object>> fields(List<Configuration> configurations) {
    List<Map<String, Object>> all = new ArrayList<>();
    for (Configuration configuration : configurations) {
      Map<String, Object> fields = new LinkedHashMap<>();
      fields.put("fitted", configuration.fitted());
      fields.put("since", configuration.since().toString());
      fields.put("touched", configuration.touched().stream().map(Circuit::word).toList());
      fields.put("learnt", learnt(configuration.learnt()));
      all.add(fields);
    }
    return all;
  }

  /** The configurations that a vehicle's file tells. */
  static List<Configuration> configurations(JsonObjectReader root) throws VehicleFileException {
    List<Configuration> all = new ArrayList<>();
    for (JsonObjectReader object : root.objects("configurations")) {
      object.allowOnly("fitted", "since", "touched", "learnt");
      Set<Circuit> touched = new TreeSet<>();
      for (String word : object.texts("touched")) {
        touched.add(circuit(object, "touched", word));
      }
      LearntHeat learnt = learnt(object);
      all.add(
          object.build(
              () -> new Configuration(object.text("fitted"), since(object), touched, learnt)));
    }
    return all;
  }

  private static Instant since(JsonObjectReader object) throws VehicleFileException {
    return moment(object, "since");
  }

  private static List<Map<String, Object>> learnt(LearntHeat heat) {
    List<Map<String, Object>> all = new ArrayList<>();
    for (LearntQuantity learnt : heat.quantities()) {
      Map<String, Object> fields = quantity(learnt.quantity());
      fields.put("mean", learnt.mean());
      fields.put("mean_spread", learnt.meanSpread());
      fields.put("scatter", learnt.scatter());
      fields.put("trips", learnt.trips());
      fields.put("loaded_h", learnt.loadedHours());
      fields.put("last", learnt.last().toString());
      learnt
          .against()
          .ifPresent(
              told ->
                  fields.put(
                      "against",
                      Map.of("coordinate", told.coordinate(), "coordinate_spread", told.spread())));
      all.add(fields);
    }
    return all;
  }

  private static LearntHeat learnt(JsonObjectReader root) throws VehicleFileException {
    List<LearntQuantity> all = new ArrayList<>();
    for (JsonObjectReader object : root.objects("learnt")) {
      object.allowOnly(
          "id",
          "circuit",
          "logarithmic",
          "usual",
          "usual_spread",
          "mean",
          "mean_spread",
          "scatter",
          "trips",
          "loaded_h",
          "last",
          "against");
      HeatQuantity quantity = quantity(object);
      Optional<HeatTold> against = against(object, quantity);
      all.add(
          object.build(
              () ->
                  new LearntQuantity(
                      quantity,
                      object.number("mean"),
                      object.number("mean_spread"),
                      object.number("scatter"),
                      object.wholeNumber("trips"),
                      object.number("loaded_h"),
                      moment(object, "last"),
                      against)));
    }
    return root.build(() -> new LearntHeat(all));
  }

  private static Optional<HeatTold> against(JsonObjectReader object, HeatQuantity quantity)
      throws VehicleFileException {
    Optional<JsonObjectReader> against = object.object("against");
    if (against.isEmpty()) {
      return Optional.empty();
    }
    JsonObjectReader told = against.get();
    told.allowOnly("coordinate", "coordinate_spread");
    return Optional.of(
        told.build(
            () ->
                new HeatTold(
                    quantity, told.number("coordinate"), told.number("coordinate_spread"))));
  }

  private static Map<String, Object> told(HeatTold told) {
    Map<String, Object> fields = quantity(told.quantity());
    fields.put("coordinate", told.coordinate());
    fields.put("coordinate_spread", told.spread());
    return fields;
  }

  private static HeatTold told(JsonObjectReader object) throws VehicleFileException {
    object.allowOnly(
        "id", "circuit", "logarithmic", "usual", "usual_spread", "coordinate", "coordinate_spread");
    HeatQuantity quantity = quantity(object);
    return object.build(
        () ->
            new HeatTold(
                quantity, object.number("coordinate"), object.number("coordinate_spread")));
  }

  private static Map<String, Object> quantity(HeatQuantity quantity) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("id", quantity.id());
    fields.put("circuit", quantity.circuit().word());
    fields.put("logarithmic", quantity.logarithmic());
    fields.put("usual", quantity.usual());
    fields.put("usual_spread", quantity.spread());
    return fields;
  }

  private static HeatQuantity quantity(JsonObjectReader object) throws VehicleFileException {
    Circuit circuit = circuit(object, "circuit", object.text("circuit"));
    return object.build(
        () ->
            new HeatQuantity(
                object.text("id"),
                circuit,
                object.flag("logarithmic"),
                object.number("usual"),
                object.number("usual_spread")));
  }

  private static Circuit circuit(JsonObjectReader object, String key, String word)
      throws VehicleFileException {
    return Circuit.of(word).orElseThrow(() -> object.unexpected(key, "one of " + Circuit.words()));
  }

  private static Map<String, Object> derate(DerateBegun derate) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("channel", derate.channelId());
    fields.put("began_degC", derate.celsius());
    fields.put("also_hot", derate.alsoHot());
    return fields;
  }

  private static DerateBegun derate(JsonObjectReader object) throws VehicleFileException {
    object.allowOnly("channel", "began_degC", "also_hot");
    return object.build(
        () ->
            new DerateBegun(
                object.text("channel"), object.number("began_degC"), object.texts("also_hot")));
  }

  private static Instant moment(JsonObjectReader object, String key) throws VehicleFileException {
    String text = object.text(key);
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw object.unexpected(key, "a moment such as 2026-07-15T17:45:12Z");
    }
  }

  private static String text(Object fields) {
    try {
      return MAPPER.writeValueAsString(fields);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("Maps, lists, texts and numbers are always JSON", e);
    }
  }
}
