package steadypull.ui;

import java.util.OptionalDouble;
import steadypull.channel.QuantityFormat;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;
import steadypull.thermal.ChannelForecast;

/**
 * Words for headroom and time: the large figure of a leading strip, and the figure of the others.
 */
final class HeroWords {
  private static final double NOW_SECONDS = 5;

  private final Words words;
  private final QuantityFormat quantities;

  HeroWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  /** Title, figure and unit; empty where the strip has none. */
  record Hero(String title, String figure, String unit) {}

  Hero hero(StripState strip) {
    if (strip.level() == StripLevel.DERATED && strip.powerCutPercent().isPresent()) {
      return new Hero(
          words.say("strip.derated"),
          quantities.whole(strip.powerCutPercent().getAsDouble()),
          words.say("strip.unitPercent"));
    }
    OptionalDouble headroom = headroom(strip);
    if (headroom.isEmpty()) {
      return new Hero(words.say(fallbackTitle(strip.level())), "", "");
    }
    String limit = limit(strip);
    OptionalDouble seconds = secondsToLimit(strip);
    boolean counts = strip.level() == StripLevel.ADVISE || strip.level() == StripLevel.ACT_NOW;
    if (counts && headroom.getAsDouble() > 0 && seconds.isPresent()) {
      return new Hero(words.say("strip.reachesIn", limit), countdown(seconds.getAsDouble()), "");
    }
    return new Hero(
        title(strip.level(), limit, headroom.getAsDouble()),
        quantities.temperatureDifference(Math.abs(headroom.getAsDouble())),
        unit(strip.level(), headroom.getAsDouble()));
  }

  private String unit(StripLevel level, double headroom) {
    if (headroom >= 0) {
      return words.say("strip.unitUnder");
    }
    return level == StripLevel.DERATED ? words.say("strip.unitOver") : "";
  }

  /** What stands beside the word of a strip that does not lead. */
  String more(StripState strip) {
    return switch (strip.level()) {
      case HOLDS, DERATED, LEARNING -> headroomText(strip);
      case MAY_REACH, ADVISE, ACT_NOW -> limit(strip);
      case NO_DATA -> "";
    };
  }

  private String headroomText(StripState strip) {
    OptionalDouble headroom = headroom(strip);
    if (headroom.isEmpty()) {
      return "";
    }
    double degrees = headroom.getAsDouble();
    return words.say(
        degrees >= 0 ? "strip.under" : "strip.over",
        quantities.temperatureDifference(Math.abs(degrees)));
  }

  private String countdown(double seconds) {
    return seconds < NOW_SECONDS ? words.say("strip.now") : quantities.countdown(seconds);
  }

  private String title(StripLevel level, String limit, double headroom) {
    return switch (level) {
      case DERATED -> words.say("strip.derated");
      case MAY_REACH -> words.say("strip.mayReachLimit", limit);
      case HOLDS, ADVISE, ACT_NOW, NO_DATA, LEARNING ->
          words.say(headroom >= 0 ? "strip.nearLimit" : "strip.overLimit", limit);
    };
  }

  private static String fallbackTitle(StripLevel level) {
    return switch (level) {
      case HOLDS -> "strip.noLimit";
      case MAY_REACH -> "strip.mayReach";
      case ADVISE, ACT_NOW -> "strip.reaches";
      case DERATED -> "strip.derated";
      case NO_DATA -> "strip.noData";
      case LEARNING -> "strip.learning";
    };
  }

  private static OptionalDouble secondsToLimit(StripState strip) {
    return strip.forecast() instanceof ChannelForecast.Ready ready && ready.toLimit().isPresent()
        ? ready.toLimit().get().seconds()
        : OptionalDouble.empty();
  }

  private String limit(StripState strip) {
    return strip.limit().map(limit -> quantities.temperature(limit.celsius())).orElse("");
  }

  private static OptionalDouble headroom(StripState strip) {
    return strip.limit().isPresent() && strip.latestCelsius().isPresent()
        ? OptionalDouble.of(strip.limit().get().celsius() - strip.latestCelsius().getAsDouble())
        : OptionalDouble.empty();
  }
}
