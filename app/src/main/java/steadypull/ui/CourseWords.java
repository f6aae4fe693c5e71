package steadypull.ui;

import java.util.OptionalDouble;
import steadypull.channel.QuantityFormat;
import steadypull.drive.StripState;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.LimitForecast;

/** Words for what comes: settles, peaks, rises, falls, or reaches its limit. */
final class CourseWords {
  /** The strips look three minutes ahead. */
  static final double HORIZON_SECONDS = 180;

  private static final double SEARCH_STEP_SECONDS = 1;
  private static final double PEAK_CELSIUS = 1;
  private static final double CHANGE_CELSIUS = 1;
  private static final double SETTLED_CELSIUS = 1.5;
  private static final double NOW_SECONDS = 5;

  private final Words words;
  private final QuantityFormat quantities;

  CourseWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  /** The second line of a strip's state. */
  String detail(StripState strip) {
    if (strip.level() == StripState.StripLevel.NO_DATA) {
      return lastHeard(strip.secondsSinceHeard());
    }
    return switch (strip.forecast()) {
      case ChannelForecast.Learning _ -> words.say("strip.forecastLater");
      case ChannelForecast.NoData _ -> words.say("strip.noForecast");
      case ChannelForecast.Ready ready -> ready(strip, ready);
    };
  }

  /** What stands where the fan would be; empty while there is a fan. */
  String note(StripState strip) {
    return switch (strip.forecast()) {
      case ChannelForecast.Learning _ ->
          words.say(
              strip.level() == StripState.StripLevel.NO_DATA
                  ? "strip.noForecast"
                  : "strip.noForecastYet");
      case ChannelForecast.NoData _ -> words.say("strip.noForecast");
      case ChannelForecast.Ready _ ->
          strip.level() == StripState.StripLevel.NO_DATA ? words.say("strip.noForecast") : "";
    };
  }

  private String lastHeard(double seconds) {
    return Double.isFinite(seconds)
        ? words.say("strip.lastHeard", quantities.whole(seconds))
        : words.say("strip.neverHeard");
  }

  private String ready(StripState strip, ChannelForecast.Ready ready) {
    return switch (strip.level()) {
      case HOLDS, MAY_REACH, NO_DATA, LEARNING -> course(ready);
      case ADVISE, ACT_NOW, DERATED -> {
        String likely = ready.toLimit().map(this::likely).orElse("");
        String eased = easedUnder(strip);
        yield !eased.isEmpty() ? eased : likely.isEmpty() || isOver(strip) ? course(ready) : likely;
      }
    };
  }

  private static boolean isOver(StripState strip) {
    return strip.latestCelsius().isPresent()
        && strip.limit().isPresent()
        && strip.latestCelsius().getAsDouble() >= strip.limit().get().celsius();
  }

  private String likely(LimitForecast limit) {
    OptionalDouble from = limit.secondsP25();
    OptionalDouble to = limit.secondsP75();
    if (from.isEmpty()) {
      return "";
    }
    String earliest = quantities.countdown(from.getAsDouble());
    if (to.isEmpty()) {
      return words.say("strip.likelyLater", earliest);
    }
    String latest = quantities.countdown(to.getAsDouble());
    return from.getAsDouble() < NOW_SECONDS
        ? words.say("strip.likelyNow", latest)
        : words.say("strip.likely", earliest, latest);
  }

  private String easedUnder(StripState strip) {
    if (!isOver(strip) || strip.eased().isEmpty()) {
      return "";
    }
    Fan fan = strip.eased().get();
    double limit = strip.limit().orElseThrow().celsius();
    for (double ahead = 0; ahead <= HORIZON_SECONDS; ahead += SEARCH_STEP_SECONDS) {
      if (fan.at(Fan.MEDIAN, ahead) < limit) {
        return words.say(
            "strip.easedUnder", quantities.temperature(limit), quantities.countdown(ahead));
      }
    }
    return "";
  }

  private String course(ChannelForecast.Ready ready) {
    double now = ready.nowCelsius();
    double end = ready.fan().at(Fan.MEDIAN, HORIZON_SECONDS);
    double peak = peak(ready.fan());
    double settled = ready.settlesAtCelsius();
    if (peak - Math.max(now, end) >= PEAK_CELSIUS) {
      return words.say("strip.peaks", quantities.temperature(peak));
    }
    if (Math.abs(settled - end) < SETTLED_CELSIUS) {
      return words.say("strip.settles", quantities.temperature(settled));
    }
    if (Math.abs(end - now) < CHANGE_CELSIUS) {
      return words.say("strip.about", quantities.temperature(end));
    }
    return words.say(end >= now ? "strip.rising" : "strip.falling", quantities.temperature(end));
  }

  private static double peak(Fan fan) {
    double peak = Double.NEGATIVE_INFINITY;
    for (double ahead = 0; ahead <= HORIZON_SECONDS; ahead += SEARCH_STEP_SECONDS) {
      peak = Math.max(peak, fan.at(Fan.MEDIAN, ahead));
    }
    return peak;
  }
}
