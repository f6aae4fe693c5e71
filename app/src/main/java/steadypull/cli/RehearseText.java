package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.review.ForecastScore;

/** The scores of rehearsed trips, for people and for machines. Stateless. */
final class RehearseText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private RehearseText() {}

  /** Keys are stable; more may be added. What cannot be told has no key. */
  static String json(RehearsalScores scores, Optional<RuleChanges> changes) {
    ObjectNode node = JSON.createObjectNode();
    node.put("trips", scores.trips());
    node.put("hours", rounded(scores.hours(), 2));
    node.put("derates", scores.derates());
    ArrayNode rows = node.putArray("rows");
    scores.rows().forEach((who, score) -> describe(who, score, rows.addObject()));
    node.putObject("followed")
        .put("trips", scores.followedTrips())
        .put("hours", rounded(scores.followedHours(), 2));
    changes.ifPresent(each -> describe(each, node.putArray("changes")));
    return node.toString();
  }

  private static void describe(RuleChanges changes, ArrayNode all) {
    for (RuleChanges.Change change : changes.changes()) {
      ObjectNode node = all.addObject();
      node.put("trip", change.trip());
      node.put("time_s", rounded(change.said().timeMicros() / 1e6, 1));
      node.put("event", change.said().kind().word());
      change.said().rule().ifPresent(rule -> node.put("rule", rule));
      change.said().level().ifPresent(level -> node.put("level", level.word()));
      node.put("by", change.isByFile() ? "file" : "rules-in-force");
    }
  }

  private static void describe(String who, ForecastScore score, ObjectNode row) {
    row.put("forecaster", who);
    row.put("warned", score.warned());
    score.leadSeconds(0.1).ifPresent(lead -> row.put("lead_p10_s", rounded(lead, 1)));
    score.leadSeconds(0.5).ifPresent(lead -> row.put("lead_p50_s", rounded(lead, 1)));
    row.put("advisories", score.advisories());
    score.falsePerHour().ifPresent(each -> row.put("false_per_h", rounded(each, 2)));
  }

  private static BigDecimal rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
  }

  /** A table, a line for each forecaster; empty if there is no trip. */
  static String table(RehearsalScores scores) {
    if (scores.trips() + scores.followedTrips() == 0) {
      return "";
    }
    StringBuilder text = new StringBuilder();
    text.append(
        "%s, %s, %s%n".formatted(trips(scores.trips()), hours(scores.hours()), derates(scores)));
    if (scores.followedTrips() > 0) {
      text.append(
          "apart: %s, %s, on which the driver eased the load after advice%n"
              .formatted(trips(scores.followedTrips()), hours(scores.followedHours())));
    }
    text.append(
        "%n%-14s %8s %10s %12s %11s %13s%n"
            .formatted(
                "forecaster", "warned", "lead p10", "lead median", "advisories", "false an hour"));
    scores.rows().forEach((who, score) -> text.append(row(who, score)));
    return text.toString();
  }

  private static String row(String who, ForecastScore score) {
    return "%-14s %8s %10s %12s %11d %13s%n"
        .formatted(
            who,
            score.warned() + "/" + score.derates(),
            seconds(score.leadSeconds(0.1)),
            seconds(score.leadSeconds(0.5)),
            score.advisories(),
            rate(score.falsePerHour()));
  }

  private static String trips(int count) {
    return count == 1 ? "1 trip" : count + " trips";
  }

  private static String derates(RehearsalScores scores) {
    return scores.derates() == 1 ? "1 derate" : scores.derates() + " derates";
  }

  private static String hours(double hours) {
    return rounded(hours, 1) + " h";
  }

  private static String seconds(OptionalDouble value) {
    return value.isPresent() ? rounded(value.getAsDouble(), 0) + " s" : "-";
  }

  private static String rate(OptionalDouble value) {
    return value.isPresent() ? rounded(value.getAsDouble(), 2).toPlainString() : "-";
  }
}
