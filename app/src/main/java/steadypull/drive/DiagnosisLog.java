package steadypull.drive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import steadypull.adapter.diagnostic.TroubleCode;
import steadypull.store.TripEvent;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.TroubleCodes.Code;
import steadypull.vehicle.TroubleCodes.Status;

/**
 * Keeps what control units told during a trip, from its events, live or replayed. Each control unit
 * is heard by itself: one that keeps silent for a round loses nothing, and a code is new only if
 * its control unit was heard without it before. Pipeline thread only.
 */
final class DiagnosisLog {
  private static final ObjectMapper JSON = new ObjectMapper();

  private record Teller(Status status, String controlUnit) {}

  private final Locale language;
  private final Map<Teller, List<Code>> codes =
      new TreeMap<>(Comparator.comparing(Teller::status).thenComparing(Teller::controlUnit));
  private final Map<String, OptionalLong> firstTold = new HashMap<>();
  private final Map<String, Diagnosis.Frame> frames = new TreeMap<>();
  private final Map<String, Diagnosis.ControlUnit> units = new TreeMap<>();

  private Diagnosis latest = Diagnosis.none();

  DiagnosisLog(Locale language) {
    this.language = language;
  }

  /**
   * Takes an event of kind {@code CODES} or {@code VEHICLE}. What cannot be read, because another
   * program wrote it, tells nothing: the trip is good without it.
   */
  void take(TripEvent event) {
    try {
      JsonNode node = JSON.readTree(event.detail());
      takeCodes(node, event.timeMicros());
      takeFrame(node.path("freeze_frame"));
      takeUnit(node.path("control_unit"));
      latest = gathered();
    } catch (JsonProcessingException | IllegalArgumentException unreadable) {
      latest = gathered();
    }
  }

  private void takeCodes(JsonNode node, long timeMicros) {
    Optional<Status> status = Status.of(node.path("status").asText());
    if (status.isPresent()) {
      for (JsonNode address : node.path("told_by")) {
        Teller teller = new Teller(status.get(), address.asText());
        boolean isFirst = !codes.containsKey(teller);
        OptionalLong cameUp = isFirst ? OptionalLong.empty() : OptionalLong.of(timeMicros);
        codes.put(teller, codes(node.path("codes"), teller, cameUp));
      }
    }
  }

  private List<Code> codes(JsonNode all, Teller teller, OptionalLong cameUp) {
    List<Code> told = new ArrayList<>();
    for (JsonNode each : all) {
      if (each.path("control_unit").asText().equals(teller.controlUnit())) {
        told.add(code(new TroubleCode(each.path("code").asText()), teller, cameUp));
      }
    }
    return told;
  }

  /** A code that goes and comes back is as old as it was. */
  private Code code(TroubleCode code, Teller teller, OptionalLong cameUp) {
    OptionalLong first = firstTold.computeIfAbsent(teller + code.text(), key -> cameUp);
    return new Code(
        code.text(), code.meaning(language), teller.status(), teller.controlUnit(), first);
  }

  private void takeFrame(JsonNode node) {
    if (node.isObject()) {
      List<Diagnosis.Value> values = new ArrayList<>();
      for (JsonNode each : node.path("values")) {
        values.add(
            new Diagnosis.Value(
                each.path("name").asText(),
                each.path("value").asDouble(),
                each.path("unit").asText(),
                Optional.of(each.path("words").asText()).filter(words -> !words.isEmpty())));
      }
      String unit = node.path("control_unit").asText();
      frames.put(unit, new Diagnosis.Frame(unit, node.path("code").asText(), values));
    }
  }

  private void takeUnit(JsonNode node) {
    if (node.isObject()) {
      List<String> calibrations = new ArrayList<>();
      node.path("calibrations").forEach(each -> calibrations.add(each.asText()));
      String address = node.path("address").asText();
      units.put(
          address, new Diagnosis.ControlUnit(address, node.path("name").asText(), calibrations));
    }
  }

  private Diagnosis gathered() {
    TroubleCodes all =
        new TroubleCodes(
            codes.keySet().stream().map(Teller::status).collect(Collectors.toSet()),
            codes.values().stream().flatMap(List::stream).toList());
    return new Diagnosis(all, List.copyOf(frames.values()), List.copyOf(units.values()));
  }

  TroubleCodes codes() {
    return latest.codes();
  }

  Diagnosis diagnosis() {
    return latest;
  }
}
