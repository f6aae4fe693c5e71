package steadypull.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.regex.Pattern;

/** Advice as comparable lines, from a terminal and from JSON lines. */
final class ToldAdvice {
  private static final Pattern TOLD =
      Pattern.compile(
          "\\d+:\\d\\d:\\d\\d  (notice|caution|warning|derate began|derate ended|power limited).*");

  private ToldAdvice() {}

  static List<String> live(String terminal) {
    return terminal.lines().filter(line -> TOLD.matcher(line).matches()).toList();
  }

  static List<String> replayed(List<JsonNode> lines) {
    return lines.stream()
        .filter(line -> !line.get("event").asText().equals("end"))
        .map(ToldAdvice::asTold)
        .toList();
  }

  private static String asTold(JsonNode line) {
    long seconds = (long) line.get("time_s").asDouble();
    return "%d:%02d:%02d  %s%s%s%s"
        .formatted(
            seconds / 3600,
            seconds / 60 % 60,
            seconds % 60,
            line.has("level") ? line.get("level").asText() + " " : "",
            line.get("event").asText().replace('-', ' '),
            line.has("channel") ? " " + line.get("channel").asText() : "",
            line.has("text") ? ": " + line.get("text").asText() : "");
  }
}
