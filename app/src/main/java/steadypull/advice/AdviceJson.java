package steadypull.advice;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;

/**
 * Writes events and forecasts as JSON, one object a line, keys in the order of the contract and
 * absent where they do not apply. Seconds and degC have one decimal, probabilities two or three.
 * Any thread.
 */
public final class AdviceJson {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
  private static final double[] HORIZONS_SECONDS = {30, 60, 120, 300, 600};

  private AdviceJson() {}

  /** One event as one line, without a line end. */
  public static String event(AdviceEvent event) {
    ObjectNode node = node(event.timeMicros(), event.kind().word());
    event.rule().ifPresent(rule -> node.put("rule", rule));
    event.level().ifPresent(level -> node.put("level", level.word()));
    event.channel().ifPresent(channel -> node.put("channel", channel.id()));
    tenths(node, "value", event.value());
    tenths(node, "limit", event.limit());
    event.probability180().ifPresent(each -> node.put("probability_180s", probability(each)));
    tenths(node, "seconds_to_limit", event.secondsToLimit());
    tenths(node, "seconds_to_limit_p10", event.secondsToLimitP10());
    tenths(node, "seconds_to_limit_p90", event.secondsToLimitP90());
    tenths(node, "settles_at", event.settlesAt());
    if (!event.text().isEmpty()) {
      node.put("text", event.text());
    }
    return line(node);
  }

  /**
   * A forecast as lines: channel by channel, 30, 60, 120, 300 and 600 s ahead. Channels without a
   * forecast have no line.
   */
  public static List<String> forecast(Forecast forecast) {
    return forecast.channels().stream()
        .flatMap(
            each ->
                each instanceof ChannelForecast.Ready ready
                    ? DoubleStream.of(HORIZONS_SECONDS)
                        .mapToObj(horizon -> horizon(forecast.timeMicros(), ready, horizon))
                    : java.util.stream.Stream.<String>empty())
        .toList();
  }

  /** The last line. */
  public static String end(long timeMicros) {
    return line(node(timeMicros, "end"));
  }

  private static String horizon(long timeMicros, ChannelForecast.Ready ready, double seconds) {
    ObjectNode node = node(timeMicros, "forecast");
    node.put("channel", ready.channel().id());
    node.put("horizon_s", Math.round(seconds));
    quantile(node, "p05", ready.fan(), 0.05, seconds);
    quantile(node, "p10", ready.fan(), 0.10, seconds);
    quantile(node, "p50", ready.fan(), 0.50, seconds);
    quantile(node, "p90", ready.fan(), 0.90, seconds);
    quantile(node, "p95", ready.fan(), 0.95, seconds);
    return line(node);
  }

  private static void quantile(ObjectNode node, String key, Fan fan, double level, double seconds) {
    node.put(key, rounded(fan.at(Fan.LEVELS.indexOf(level), seconds), 1));
  }

  private static ObjectNode node(long timeMicros, String event) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("time_s", rounded(timeMicros / 1e6, 1));
    node.put("event", event);
    return node;
  }

  private static void tenths(ObjectNode node, String key, OptionalDouble value) {
    value.ifPresent(each -> node.put(key, rounded(each, 1)));
  }

  private static BigDecimal probability(double value) {
    BigDecimal rounded = rounded(value, 3).stripTrailingZeros();
    return rounded.scale() < 2 ? rounded.setScale(2, RoundingMode.UNNECESSARY) : rounded;
  }

  private static BigDecimal rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
  }

  private static String line(ObjectNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("A tree of plain values can be written", impossible);
    }
  }
}
