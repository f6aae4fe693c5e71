package steadypull.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import steadypull.drive.Diagnosis;
import steadypull.vehicle.TroubleCodes;

/** What control units told, as lines for a terminal, each once. Pipeline thread only. */
final class CodeNews {
  private final Set<String> told = new HashSet<>();

  /** The lines that were not told before; mostly none. */
  List<String> since(Diagnosis diagnosis) {
    List<String> lines = new ArrayList<>();
    TroubleCodes codes = diagnosis.codes();
    if (codes.isStoredKnown() && codes.stored().isEmpty()) {
      lines.add("no trouble code is stored");
    }
    codes.codes().forEach(code -> lines.add(line(code)));
    diagnosis.frames().forEach(frame -> lines.add(line(frame)));
    diagnosis.controlUnits().forEach(unit -> lines.add(line(unit)));
    lines.removeIf(line -> !told.add(line));
    return lines;
  }

  private static String line(TroubleCodes.Code code) {
    boolean isNews = code.cameUpMicros().isPresent();
    boolean isStored = code.status() == TroubleCodes.Status.STORED;
    return "%strouble code %s (%s, control unit %s)%s"
        .formatted(
            isNews ? "new " : "",
            code.line(),
            code.status().word(),
            code.controlUnit(),
            isNews && isStored ? ": have a workshop look at it" : "");
  }

  private static String line(Diagnosis.Frame frame) {
    String values =
        frame.values().stream()
            .map(value -> value.name() + " " + figure(value))
            .collect(Collectors.joining(", "));
    return "measured when %s was stored (control unit %s): %s"
        .formatted(frame.code(), frame.controlUnit(), values.isEmpty() ? "nothing" : values);
  }

  private static String figure(Diagnosis.Value value) {
    String unit = value.unit().equals("1") ? "" : " " + value.unit();
    return value.words().orElseGet(() -> "%s%s".formatted(rounded(value.value()), unit));
  }

  private static String rounded(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.contains(".") ? text.replaceFirst("\\.?0+$", "") : text;
  }

  private static String line(Diagnosis.ControlUnit unit) {
    String name = unit.name().isEmpty() ? "" : " is " + unit.name();
    String works =
        unit.calibrations().isEmpty()
            ? ""
            : " works with " + String.join(", ", unit.calibrations());
    return "control unit "
        + unit.address()
        + name
        + (name.isEmpty() || works.isEmpty() ? "" : ",")
        + works;
  }
}
