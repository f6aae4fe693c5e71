package steadypull.ui;

import java.util.OptionalDouble;
import steadypull.advice.AdviceLine;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.StripState;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;

/** Words for one strip: value, state and course to come. */
final class StripWords {
  private static final double STEADY_CELSIUS_PER_MINUTE = 0.5;

  private final Words words;
  private final QuantityFormat quantities;
  private final CourseWords courses;
  private final HeroWords heroes;

  StripWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
    this.courses = new CourseWords(words, quantities);
    this.heroes = new HeroWords(words, quantities);
  }

  StripFace face(StripState strip, DriveSnapshot snapshot) {
    AdviceLine advice = snapshot.advice();
    String name = words.name(strip.channel());
    String value = digits(strip);
    HeroWords.Hero hero = heroes.hero(strip);
    String word = words.say(wordKey(strip));
    String more = heroes.more(strip);
    String detail = courses.detail(strip);
    return new StripFace(
        strip,
        name,
        trend(strip, false),
        trend(strip, true),
        value,
        isStale(strip),
        tone(strip, advice),
        glyph(strip, advice),
        word,
        more,
        detail,
        hero.title(),
        hero.figure(),
        hero.unit(),
        limit(strip),
        courses.note(strip),
        eased(strip, advice),
        spoken(name, value, word + " " + more, detail));
  }

  private String spoken(String name, String value, String state, String detail) {
    String told = value.equals(RoadFace.UNKNOWN) ? words.say("strip.unknown") : value + "°";
    return words.say("strip.help", name, told, state.strip(), detail);
  }

  private String digits(StripState strip) {
    OptionalDouble latest = strip.latestCelsius();
    return latest.isPresent()
        ? quantities.temperatureDigits(latest.getAsDouble())
        : RoadFace.UNKNOWN;
  }

  private static boolean isStale(StripState strip) {
    return strip.level() == StripState.StripLevel.NO_DATA || strip.latestCelsius().isEmpty();
  }

  private String trend(StripState strip, boolean inFull) {
    OptionalDouble rate = strip.degreesPerMinute();
    if (rate.isEmpty() || isStale(strip)) {
      return "";
    }
    double perMinute = rate.getAsDouble();
    if (Math.abs(perMinute) < STEADY_CELSIUS_PER_MINUTE) {
      return words.say("trend.steady");
    }
    String key = perMinute > 0 ? "trend.rising" : "trend.falling";
    return inFull
        ? words.say(key + "By", quantities.temperatureDifference(Math.abs(perMinute)))
        : words.say(key);
  }

  private String limit(StripState strip) {
    return strip
        .limit()
        .map(limit -> words.say("strip.limit", quantities.temperature(limit.celsius())))
        .orElse("");
  }

  private String eased(StripState strip, AdviceLine advice) {
    if (strip.eased().isEmpty() || !(strip.forecast() instanceof ChannelForecast.Ready)) {
      return "";
    }
    Fan fan = strip.eased().get();
    String settled = quantities.temperature(fan.at(Fan.MEDIAN, CourseWords.HORIZON_SECONDS));
    OptionalDouble speed = advice.easedSpeed();
    return speed.isPresent()
        ? words.say("strip.easedAt", quantities.speed(speed.getAsDouble()), settled)
        : words.say("strip.easedOff", settled);
  }

  private static String wordKey(StripState strip) {
    if (strip.limit().isEmpty() && strip.level() == StripState.StripLevel.HOLDS) {
      return "strip.noLimit";
    }
    return switch (strip.level()) {
      case HOLDS -> "strip.holds";
      case MAY_REACH -> "strip.mayReach";
      case ADVISE, ACT_NOW -> "strip.reaches";
      case DERATED -> "strip.derated";
      case NO_DATA -> "strip.noData";
      case LEARNING -> "strip.learning";
    };
  }

  private static Tone tone(StripState strip, AdviceLine advice) {
    return switch (strip.level()) {
      case HOLDS, MAY_REACH, NO_DATA, LEARNING -> Tone.NEUTRAL;
      case ADVISE -> Tone.CAUTION;
      case ACT_NOW -> Tone.DANGER;
      case DERATED -> isUrgent(strip, advice) ? Tone.DANGER : Tone.CAUTION;
    };
  }

  private static Glyph glyph(StripState strip, AdviceLine advice) {
    return switch (strip.level()) {
      case HOLDS -> strip.limit().isPresent() ? Glyph.HOLDS : Glyph.UNKNOWN;
      case MAY_REACH -> Glyph.MAY_REACH;
      case ADVISE -> Glyph.CAUTION;
      case ACT_NOW -> Glyph.DANGER;
      case DERATED -> isUrgent(strip, advice) ? Glyph.DANGER : Glyph.CAUTION_BLOCK;
      case NO_DATA -> strip.limit().isPresent() ? Glyph.NO_DATA : Glyph.UNKNOWN;
      case LEARNING -> Glyph.UNKNOWN;
    };
  }

  private static boolean isUrgent(StripState strip, AdviceLine advice) {
    return advice.state() == AdviceLine.State.ACT_NOW
        && advice.channel().filter(strip.channel()::equals).isPresent();
  }
}
