package steadypull.drive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import steadypull.store.TripEvent;
import steadypull.tablet.TabletNews;

/**
 * News of the tablet as a trip keeps them: a JSON object with what happened ({@code news}), its
 * figures with their units in the keys, and the same in words ({@code text}).
 */
final class TabletText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private TabletText() {}

  static TripEvent event(long timeMicros, TabletNews news) {
    TripEvent.Kind kind =
        news instanceof TabletNews.ClockSet ? TripEvent.Kind.CLOCK : TripEvent.Kind.TABLET;
    ObjectNode node = JSON.createObjectNode();
    write(node, news);
    return new TripEvent(timeMicros, kind, node.put("text", sentence(news)).toString());
  }

  private static void write(ObjectNode node, TabletNews news) {
    switch (news) {
      case TabletNews.OnBattery(int percent) ->
          node.put("news", "on-battery").put("battery_pct", percent);
      case TabletNews.BatteryUnder(int under, int percent) ->
          node.put("news", "battery-low").put("under_pct", under).put("battery_pct", percent);
      case TabletNews.BatteryNearlyEmpty(int percent) ->
          node.put("news", "battery-nearly-empty").put("battery_pct", percent);
      case TabletNews.Charging(int percent) ->
          node.put("news", "charging").put("battery_pct", percent);
      case TabletNews.MayFallAsleep(String reason) ->
          node.put("news", "may-fall-asleep").put("reason", reason);
      case TabletNews.ClockSet set ->
          node.put("news", "clock-set")
              .put("from", set.from().toString())
              .put("to", set.to().toString())
              .put("by_s", seconds(set.by()))
              .put("may_have_slept", set.mayHaveSlept());
      case TabletNews.Slept(Duration length, boolean stood) ->
          node.put("news", "slept").put("length_s", seconds(length)).put("clock_stood", stood);
    }
  }

  /** What an event tells; empty if it tells something that this version does not know. */
  static Optional<TabletNews> news(TripEvent event) {
    try {
      return news(JSON.readTree(event.detail()));
    } catch (JsonProcessingException | DateTimeException unreadable) {
      return Optional.empty();
    }
  }

  private static Optional<TabletNews> news(JsonNode node) {
    int percent = node.path("battery_pct").asInt();
    return switch (node.path("news").asText()) {
      case "on-battery" -> Optional.of(new TabletNews.OnBattery(percent));
      case "battery-low" ->
          Optional.of(new TabletNews.BatteryUnder(node.path("under_pct").asInt(), percent));
      case "battery-nearly-empty" -> Optional.of(new TabletNews.BatteryNearlyEmpty(percent));
      case "charging" -> Optional.of(new TabletNews.Charging(percent));
      case "may-fall-asleep" ->
          Optional.of(new TabletNews.MayFallAsleep(node.path("reason").asText()));
      case "clock-set" ->
          Optional.of(
              new TabletNews.ClockSet(
                  Instant.parse(node.path("from").asText()),
                  Instant.parse(node.path("to").asText()),
                  node.path("may_have_slept").asBoolean()));
      case "slept" ->
          Optional.of(
              new TabletNews.Slept(
                  Duration.ofMillis(Math.round(1000 * node.path("length_s").asDouble())),
                  node.path("clock_stood").asBoolean()));
      default -> Optional.empty();
    };
  }

  /** News as whole sentences. */
  static String sentence(TabletNews news) {
    return switch (news) {
      case TabletNews.OnBattery(int percent) ->
          "The tablet runs on its battery (%d %%). Connect the charger.".formatted(percent);
      case TabletNews.BatteryUnder(int under, int percent) ->
          "The tablet's battery is under %d %% (%d %%) and getting emptier. Connect the charger."
              .formatted(under, percent);
      case TabletNews.BatteryNearlyEmpty(int percent) ->
          ("The tablet's battery is nearly empty (%d %%). The trip is kept; recording goes on in a"
                  + " new trip. Connect the charger.")
              .formatted(percent);
      case TabletNews.Charging(int percent) ->
          "The tablet is on its charger (%d %%).".formatted(percent);
      case TabletNews.MayFallAsleep _ ->
          "This computer may fall asleep while recording: keep it awake in its settings.";
      case TabletNews.ClockSet set -> sentence(set);
      case TabletNews.Slept(Duration length, boolean _) ->
          "The tablet slept or stood still for %s; nothing was recorded meanwhile."
              .formatted(span(length));
    };
  }

  private static String sentence(TabletNews.ClockSet set) {
    return "The tablet's clock went %s by %s, from %s to %s%s. The trip's times are not touched."
        .formatted(
            set.by().isNegative() ? "back" : "forward",
            span(set.by().abs()),
            set.from(),
            set.to(),
            set.mayHaveSlept() ? ": it was set, or the tablet slept" : "");
  }

  private static String span(Duration length) {
    return "%d:%02d:%02d"
        .formatted(length.toHours(), length.toMinutesPart(), length.toSecondsPart());
  }

  private static double seconds(Duration length) {
    return length.toMillis() / 1000.0;
  }
}
