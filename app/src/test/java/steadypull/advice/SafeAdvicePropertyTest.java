package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ROAD_GRADE;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitSystem;
import steadypull.thermal.Derate;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.Vehicle;

/** Whatever the drive brings, advice keeps to "What advice may say" of the design. */
class SafeAdvicePropertyTest {
  private static final Pattern ASKS_OF_SPEED =
      Pattern.compile("Let speed|Ease off|senken|Gas zurück");
  private static final Pattern FORBIDDEN =
      Pattern.compile("(?i)\\bsafe\\b|\\bOK\\b|\\bbrak(e|ing)\\b|shoulder|[-−]\\d|NaN|∞|\\{\\d");
  private static final int SECONDS_OF_EACH = 12;
  private static final double WIDEST_ACTION_PIXELS = 850;

  private static Font actionFont;

  @BeforeAll
  static void loadFont() throws IOException, FontFormatException {
    try (InputStream font =
        Objects.requireNonNull(
            SafeAdvicePropertyTest.class.getResourceAsStream(
                "/steadypull/ui/fonts/B612-Bold.ttf"))) {
      actionFont = Font.createFont(Font.TRUETYPE_FONT, font).deriveFont(64f);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void adviceStaysWithinItsBounds(long seed) {
    Random random = new Random(seed);
    SpeedRange speeds = speeds(random);
    Locale locale = random.nextBoolean() ? Locale.ENGLISH : Locale.GERMAN;
    UnitSystem units = random.nextBoolean() ? UnitSystem.METRIC : UnitSystem.IMPERIAL;
    Vehicle vehicle =
        random.nextBoolean() ? Story.vehicle(speeds) : Story.unconfirmed().withSpeeds(speeds);
    Advisor advisor = new Advisor(vehicle, Story.SHIPPED, locale, units);
    int second = 0;
    for (int scene = 0; scene < 60; scene++) {
      Scene now = new Scene(random);
      for (int count = 0; count < SECONDS_OF_EACH; count++) {
        now.draft.modelCalls = 0;
        advisor.step(now.draft.at(second++));
        check(advisor.line(), now, speeds, units, "seed %d, second %d".formatted(seed, second));
      }
      if (random.nextInt(3) == 0) {
        advisor.acknowledge(second * 1_000_000L);
      } else if (random.nextInt(3) == 0) {
        advisor.snooze(second * 1_000_000L);
      }
    }
  }

  private static void check(
      AdviceLine line, Scene scene, SpeedRange speeds, UnitSystem units, String where) {
    if (line.easedSpeed().isPresent()) {
      double advised = line.easedSpeed().getAsDouble();
      assertThat(advised)
          .as(where)
          .isBetween(speeds.lowestKilometresPerHour(), speeds.highestKilometresPerHour())
          .isGreaterThanOrEqualTo(scene.speed - 15);
      assertThat(advised / step(units))
          .as(where)
          .isCloseTo(Math.rint(advised / step(units)), within(1e-9));
    }
    if (scene.isAirConditioningToBeLeftAlone()) {
      assertThat(line.action()).as(where).doesNotContainPattern("(?i)air con|Klimaanlage");
    }
    if (scene.grade <= -2 || scene.speed < 20) {
      assertThat(line.action()).as(where).doesNotContainPattern("(?i)\\b(gear lower|Gang tiefer)");
      assertThat(line.easedSpeed()).as(where).isEmpty();
      if (line.state() != AdviceLine.State.LINK_LOST) {
        assertThat(line.action()).as(where).doesNotContainPattern(ASKS_OF_SPEED);
      }
    }
    assertThat(line.action() + " " + line.reason())
        .as(where)
        .doesNotContainPattern(FORBIDDEN)
        .doesNotContain("  ");
    assertThat(width(line.action()))
        .as(where + " " + line.action())
        .isLessThanOrEqualTo(WIDEST_ACTION_PIXELS);
    assertThat(scene.draft.modelCalls).as(where).isLessThanOrEqualTo(7);
  }

  /** Advised speeds are round in the units that the driver reads. */
  private static double step(UnitSystem units) {
    return units == UnitSystem.METRIC ? 5 : 5 * 1.609344;
  }

  private static SpeedRange speeds(Random random) {
    double lowest = 40 + random.nextInt(30);
    return new SpeedRange(lowest, lowest + 10 + random.nextInt(40));
  }

  /** One random moment that lasts. */
  private static final class Scene {
    final SituationDraft draft = new SituationDraft();
    final double speed;
    final double grade;
    private double ambient;
    private boolean airConditioning;

    /** Off only where it is known to be on, and nobody suffers without it. */
    boolean isAirConditioningToBeLeftAlone() {
      return !airConditioning || ambient >= 28;
    }

    Scene(Random random) {
      speed = random.nextInt(8) == 0 ? random.nextInt(20) : random.nextInt(125);
      grade = random.nextInt(17) - 8;
      draft.speed(speed).with(ROAD_GRADE, grade).holdsAt(random.nextInt(120));
      for (Channel channel : Channels.thermal()) {
        place(random, channel);
      }
      causes(random);
      derate(random);
      switch (random.nextInt(4)) {
        case 0 -> draft.noCodes();
        case 1 -> draft.code("P0299", "turbocharger A underboost");
        case 2 -> draft.newCode("U0402", "", 0);
        default -> draft.code("P2463", "").newCode("P026A", "charge air cooler", 3);
      }
      if (random.nextInt(10) == 0) {
        draft.silent(random.nextInt(12));
      }
    }

    /** What stands behind temperatures, so that rules about that speak too. */
    private void causes(Random random) {
      draft
          .with(Channels.ENGINE_LOAD, random.nextInt(101))
          .with(Channels.MODULE_VOLTAGE, 11 + random.nextInt(5))
          .with(Channels.CHARGE_COOLANT_TEMP, 30 + random.nextInt(60))
          .with(Channels.CHARGE_AIR_TEMP_OUT, 60 + random.nextInt(50))
          .with(ENGINE_COOLANT_TEMP, 80 + random.nextInt(40))
          .surroundings(
              new Surroundings(
                  OptionalDouble.of(random.nextInt(3000)),
                  OptionalDouble.of(2 + random.nextInt(10)),
                  random.nextInt(30)));
      ambient = random.nextInt(40);
      airConditioning = random.nextBoolean();
      draft
          .with(Channels.AMBIENT_AIR_TEMP, ambient)
          .with(new Channel("air_conditioning", "1"), airConditioning ? 1 : 0);
      if (random.nextBoolean()) {
        draft.holdsOneGearLower();
      }
      if (random.nextBoolean()) {
        draft.holdsWithoutAirConditioning();
      }
      if (random.nextBoolean()) {
        draft.roadAheadKnown();
      }
      if (random.nextInt(4) == 0) {
        draft.lastHeard(Channels.TRANSMISSION_FLUID_TEMP, 90, 0);
      }
    }

    private void place(Random random, Channel channel) {
      double limit = Story.vehicle(SpeedRange.DEFAULT).limit(channel).orElseThrow().celsius();
      switch (random.nextInt(8)) {
        case 0 -> draft.nearing(channel, limit + random.nextInt(6), limit, 1, 0);
        case 1 ->
            draft.nearing(channel, limit - 4, limit, random.nextDouble(), random.nextInt(400));
        case 2 -> draft.may(channel, limit - 8, limit, random.nextDouble());
        case 3 -> draft.learning(channel);
        case 4 -> draft.noData(channel);
        default -> draft.calm(channel, limit - 20, limit);
      }
    }

    private void derate(Random random) {
      switch (random.nextInt(6)) {
        case 0 -> draft.derate(new Derate.Active(ENGINE_COOLANT_TEMP, 0, random.nextInt(60)));
        case 1 -> draft.derate(new Derate.PowerLimited(0, 20 + random.nextInt(60)));
        default -> draft.derate(new Derate.None());
      }
    }
  }

  private static double width(String action) {
    FontRenderContext plain = new FontRenderContext(null, true, true);
    return actionFont.getStringBounds(action, plain).getWidth();
  }
}
