package steadypull.ui;

import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import steadypull.drive.Diagnosis;
import steadypull.vehicle.TroubleCodes;

/** What control units told about faults and about themselves, as paragraphs. */
final class CodePageWords {
  /** More would not fit on the page; all are kept with the trip. */
  private static final int MOST_CODES = 10;

  private static final int MOST_VALUES = 16;

  private final Words words;
  private final NumberFormat numbers;

  CodePageWords(Words words) {
    this.words = words;
    numbers = NumberFormat.getNumberInstance(words.locale());
    numbers.setMaximumFractionDigits(1);
    numbers.setGroupingUsed(false);
  }

  List<String> paragraphs(Diagnosis diagnosis) {
    List<String> paragraphs = new ArrayList<>();
    TroubleCodes codes = diagnosis.codes();
    if (!codes.isStoredKnown()) {
      paragraphs.add(words.say("codes.unknown"));
    } else if (codes.stored().isEmpty()) {
      paragraphs.add(words.say("codes.none"));
    }
    codes.codes().stream().limit(MOST_CODES).forEach(code -> paragraphs.add(code(code, diagnosis)));
    diagnosis.frames().forEach(frame -> paragraphs.add(frame(frame)));
    paragraphs.add(words.say("codes.workshop"));
    return paragraphs;
  }

  private String code(TroubleCodes.Code code, Diagnosis diagnosis) {
    return words.say(
        code.cameUpMicros().isPresent() ? "codes.new" : "codes.each",
        code.line(),
        words.say("codes." + code.status().word()),
        controlUnit(code.controlUnit(), diagnosis));
  }

  /** Its address, and its name if it told one. */
  private static String controlUnit(String address, Diagnosis diagnosis) {
    return diagnosis.controlUnits().stream()
        .filter(unit -> unit.address().equals(address) && !unit.name().isEmpty())
        .map(unit -> address + " " + unit.name())
        .findFirst()
        .orElse(address);
  }

  private String frame(Diagnosis.Frame frame) {
    String values =
        frame.values().stream()
            .limit(MOST_VALUES)
            .map(this::value)
            .collect(Collectors.joining(", "));
    return words.say("codes.frame", frame.code(), frame.controlUnit(), values);
  }

  private String value(Diagnosis.Value value) {
    String figure = value.words().orElseGet(() -> numbers.format(value.value()) + unit(value));
    return value.name() + " " + figure;
  }

  private static String unit(Diagnosis.Value value) {
    return switch (value.unit()) {
      case "1" -> "";
      case "degC" -> " °C";
      case "N.m" -> " N·m";
      default -> " " + value.unit();
    };
  }
}
