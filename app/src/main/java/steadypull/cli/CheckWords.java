package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import steadypull.channel.Channel;
import steadypull.store.CheckReport;
import steadypull.store.LostPart;

/** What checking a library found, for people and for machines. */
final class CheckWords {
  private static final int MOST_DETAILS = 3;
  private static final ObjectMapper JSON = new ObjectMapper();

  private CheckWords() {}

  static String text(CheckReport report, Path library, List<Path> earlier) {
    if (!report.isDamaged()) {
      return "The library %s is well: %s, read to the last sample.%n"
          .formatted(library, Counted.trips(report.trips()));
    }
    StringBuilder text = new StringBuilder("The library %s is damaged.%n".formatted(library));
    text.append(findings(report.findings()));
    report.lostParts().forEach(part -> text.append("Lost: %s%n".formatted(lost(part))));
    report.losses().forEach(loss -> text.append("Lost: %s%n".formatted(loss)));
    report.doubt().ifPresent(doubt -> text.append("Perhaps lost: %s.%n".formatted(doubt)));
    if (isNothingLost(report)) {
      text.append("Nothing is lost: all of it could be read elsewhere in the file.%n".formatted());
    }
    text.append(salvaged(report));
    earlier.forEach(
        folder -> text.append("An earlier salvage is still in %s.%n".formatted(folder)));
    return text.toString();
  }

  /** What the database says itself stands behind our own words. */
  private static String findings(List<String> findings) {
    // One finding of the database may have many lines, the first of them a heading.
    List<String> details =
        findings.stream().flatMap(String::lines).filter(line -> !line.startsWith("***")).toList();
    StringBuilder text =
        new StringBuilder(
            details.size() == 1
                ? "One thing is not as it was written:%n".formatted()
                : "At least %d things are not as they were written, among them:%n"
                    .formatted(details.size()));
    details.stream()
        .limit(MOST_DETAILS)
        .forEach(line -> text.append("  detail: %s%n".formatted(line)));
    return text.toString();
  }

  private static boolean isNothingLost(CheckReport report) {
    return report.isReadable()
        && report.lostParts().isEmpty()
        && report.losses().isEmpty()
        && report.doubt().isEmpty();
  }

  private static String lost(LostPart part) {
    if (part.isWholeTrip()) {
      return "trip %s, whole".formatted(part.tripId());
    }
    return String.format(
        Locale.ROOT,
        "trip %s, %d samples%s from %.1f s to %s",
        part.tripId(),
        part.samples(),
        part.ofChannels(),
        part.fromSeconds(),
        part.toSeconds().isPresent()
            ? String.format(Locale.ROOT, "%.1f s", part.toSeconds().getAsDouble())
            : "its end");
  }

  private static String salvaged(CheckReport report) {
    if (report.isReadable() && report.salvaged().isEmpty()) {
      return "Nothing was written. Without --no-salvage, what can be read, %s, goes into a new library.%n"
          .formatted(Counted.trips(report.trips()));
    }
    return report
        .salvaged()
        .map(
            folder ->
                "What could be read, %s, is in %s; the damaged library was left as it is.%n"
                    .formatted(Counted.trips(report.trips()), folder))
        .orElse("Nothing of a trip library could be read. Restore a backup.%n".formatted());
  }

  static String json(CheckReport report) {
    ObjectNode node = JSON.createObjectNode();
    node.put("integrity", report.isDamaged() ? "damaged" : "ok");
    node.put("trips", report.trips());
    ArrayNode damaged = node.putArray("damaged");
    report.lostParts().forEach(part -> describe(part, damaged.addObject()));
    ArrayNode losses = node.putArray("losses");
    report.losses().forEach(losses::add);
    report.doubt().ifPresent(losses::add);
    ArrayNode findings = node.putArray("findings");
    report.findings().forEach(findings::add);
    report.salvaged().ifPresent(folder -> node.put("salvaged", folder.toString()));
    return node + "\n";
  }

  private static void describe(LostPart part, ObjectNode node) {
    node.put("trip", part.tripId());
    node.put("lost_from_s", part.fromSeconds());
    part.toSeconds().ifPresent(seconds -> node.put("lost_to_s", seconds));
    if (part.isWholeTrip()) {
      node.put("whole_trip", true);
    } else {
      node.put("samples", part.samples());
      ArrayNode channels = node.putArray("channels");
      part.channels().stream().map(Channel::id).forEach(channels::add);
    }
  }
}
