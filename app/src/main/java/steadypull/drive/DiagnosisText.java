package steadypull.drive;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.SignalValue;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.adapter.diagnostic.ValueWords;

/** Writes what control units tell as the details of trip events; {@link DiagnosisLog} reads it. */
final class DiagnosisText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private DiagnosisText() {}

  /** Details of events of kind {@code CODES}, one for each status that somebody answered for. */
  static Map<CodeStatus, String> of(TroubleCodeReport report) {
    Map<CodeStatus, String> details = new EnumMap<>(CodeStatus.class);
    report.answeredBy().forEach((status, units) -> details.put(status, of(report, status, units)));
    return details;
  }

  private static String of(TroubleCodeReport report, CodeStatus status, Set<String> units) {
    ObjectNode node = JSON.createObjectNode().put("status", word(status));
    ArrayNode addresses = node.putArray("told_by");
    units.stream().sorted().forEach(addresses::add);
    ArrayNode codes = node.putArray("codes");
    report.found().stream()
        .filter(found -> found.status() == status)
        .forEach(
            found ->
                codes
                    .addObject()
                    .put("code", found.code().text())
                    .put("control_unit", found.controlUnit()));
    return node.toString();
  }

  private static String word(CodeStatus status) {
    return status.name().toLowerCase(Locale.ROOT);
  }

  /** Detail of an event of kind {@code VEHICLE}. */
  static String of(FreezeFrame frame) {
    ObjectNode node = JSON.createObjectNode();
    ObjectNode frozen =
        node.putObject("freeze_frame")
            .put("control_unit", frame.controlUnit())
            .put("code", frame.code().text());
    ArrayNode values = frozen.putArray("values");
    for (SignalValue each : frame.values()) {
      ObjectNode value =
          values
              .addObject()
              .put("signal", each.signal().key())
              .put("name", each.signal().name())
              .put("value", each.value())
              .put("unit", each.signal().unit());
      ValueWords.of(each).ifPresent(words -> value.put("words", words));
    }
    return node.toString();
  }

  /** Detail of an event of kind {@code VEHICLE}. */
  static String of(ControlUnitIdentity identity) {
    ObjectNode node = JSON.createObjectNode();
    ObjectNode unit =
        node.putObject("control_unit")
            .put("address", identity.controlUnit())
            .put("name", FaultText.printable(identity.name()));
    ArrayNode calibrations = unit.putArray("calibrations");
    identity.calibrations().stream().map(FaultText::printable).forEach(calibrations::add);
    ArrayNode numbers = unit.putArray("verification_numbers");
    identity.verificationNumbers().forEach(numbers::add);
    return node.toString();
  }
}
