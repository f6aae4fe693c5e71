package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.UnitSystem;

/** A rule file is taken whole or refused with the place of every fault. */
class RuleFileTest {
  private static final String GOOD =
      """
      [[rule]]
      id = "{channel}-warm"
      watch = ["charge_air_temp_out"]
      condition = 'headroom < 20'
      level = "caution"
      advise = "watch"
      why = "To be told early."
      """;

  private static String refusal(String text) {
    try {
      RuleSet.parse("my.toml", text);
    } catch (RuleFileException refused) {
      return String.valueOf(refused.getMessage());
    }
    throw new AssertionError("These rules were taken, though faulty:\n" + text);
  }

  @Test
  void anUnknownNameIsPlacedAndGuessed() {
    String text = GOOD.replace("headroom < 20", "value > 3.0 && headrom < 20");
    assertThat(refusal(text))
        .contains("my.toml:4:29: unknown name \"headrom\"")
        .contains("Did you mean headroom");
  }

  @Test
  void aFaultInsideALongTextIsPlacedOnItsOwnLine() {
    String text = GOOD.replace("'headroom < 20'", "'''\nvalue > 3.0 &&\n  valeu < 20'''");
    assertThat(refusal(text)).contains("my.toml:6:3: unknown name \"valeu\"");
  }

  @Test
  void aConditionThatIsANumberIsRefused() {
    assertThat(refusal(GOOD.replace("headroom < 20", "headroom + 20.0")))
        .contains("my.toml:4:14: expected a condition that is true or false, found a double");
  }

  @Test
  void mixedTypesAreRefused() {
    assertThat(refusal(GOOD.replace("headroom < 20", "breaks > 2")))
        .contains("my.toml:4:21: found no matching overload for '_>_' applied to '(bool, int)'");
  }

  @Test
  void aVehicleRuleCannotNameAChannelsQuantity() {
    String text = GOOD.replace("[\"charge_air_temp_out\"]", "[]");
    assertThat(refusal(text)).contains("unknown name \"headroom\"");
  }

  @Test
  void everyFaultIsNamedAtOnce() {
    String text =
        GOOD.replace("charge_air_temp_out", "charge_air_temp")
            .replace("\"caution\"", "\"orange\"")
            .replace("why =", "wy =");
    assertThat(refusal(text))
        .contains("found 4 faults")
        .contains("my.toml:3:10: unknown channel \"charge_air_temp\".")
        .contains("charge_air_temp_out")
        .contains("my.toml:5:1: expected notice, caution or warning, found \"orange\"")
        .contains("my.toml:7:1: unknown key \"wy\". Did you mean why")
        .contains("my.toml:1:1: this rule lacks \"why\"");
  }

  @Test
  void twoRulesNeedTwoIds() {
    assertThat(refusal(GOOD + GOOD)).contains("my.toml:9:1: expected an id of its own");
  }

  @Test
  void delaysHaveARange() {
    assertThat(refusal(GOOD + "on_delay_s = 601\n"))
        .contains("my.toml:8:1: expected a number from 0.0 to 600.0, found 601");
  }

  @Test
  void whatIsNotTomlIsPlaced() {
    assertThat(refusal("[[rule]]\nid = = 3\n")).contains("my.toml:2:6: this is not TOML");
  }

  @Test
  void anEmptyFileIsRefused() {
    assertThat(refusal("")).contains("my.toml:1:1: expected tables [[rule]], found none");
  }

  @Test
  void aFileThatIsNotThereIsNamed(@TempDir Path folder) {
    Path file = folder.resolve("none.toml");
    assertThatThrownBy(() -> RuleSet.load(file)).hasMessageContaining(file.toString());
  }

  @Test
  void aRuleFileIsReadFromDisk(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("my.toml"), GOOD);
    assertThat(RuleSet.load(file).ids()).containsExactly("{channel}-warm");
  }

  /** Loops could cost without bound; the language is built without them. */
  @Test
  void conditionsHaveNoLoops() {
    assertThat(refusal(GOOD.replace("headroom < 20", "[1, 2].all(x, x > 1)")))
        .contains("unknown name \"all\"");
  }

  @Test
  void everyVariableIsExplainedAtTheHeadOfTheShippedFile() throws IOException {
    try (InputStream stream =
        Objects.requireNonNull(RuleSet.class.getResourceAsStream("rules.toml"))) {
      String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      String head = text.substring(0, text.indexOf("\n[[rule]]"));
      for (RuleVariable variable : RuleVariable.values()) {
        assertThat(head).contains(variable.id());
      }
    }
  }

  @Test
  void aRuleThatIsSuppressedByDesignLetsGoAtOnceAndComesBackWhenItApplies()
      throws RuleFileException {
    String text = GOOD + "suppressed_while = 'speed_km_h < 10.0'\n";
    Story story = new Story(RuleSet.parse("my.toml", text), Locale.ENGLISH, UnitSystem.METRIC);
    var warm = new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 90, 105);
    assertThat(Story.words(story.lasts(3, warm))).containsExactly("raised charge-air-warm");
    assertThat(Story.words(story.lasts(30, warm.speed(5))))
        .containsExactly("cleared charge-air-warm", "suppressed charge-air-warm");
    assertThat(Story.words(story.lasts(1, warm.speed(50))))
        .containsExactly("raised charge-air-warm");
  }

  @Test
  void whatIsSaidOnceStandsForItsTimeAndIsNotSaidAgainOnThisTrip() throws RuleFileException {
    Story story =
        new Story(
            RuleSet.parse("my.toml", GOOD + "once_s = 60\n"), Locale.ENGLISH, UnitSystem.METRIC);
    var warm = new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 90, 105);
    assertThat(Story.words(story.lasts(60, warm))).containsExactly("raised charge-air-warm");
    assertThat(Story.words(story.lasts(1, warm))).containsExactly("cleared charge-air-warm");
    story.lasts(30, new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 60, 105));
    assertThat(story.lasts(120, warm)).isEmpty();
  }

  @Test
  void aRuleThatBreaksIsPutAsideAndTheOthersGoOn() throws RuleFileException {
    String broken =
        GOOD.replace("{channel}-warm", "broken")
            .replace("headroom < 20", "int(seconds_to_limit) < 20");
    Story story =
        new Story(RuleSet.parse("my.toml", broken + GOOD), Locale.ENGLISH, UnitSystem.METRIC);
    // No time to the limit is an endless one, and that is no whole number.
    var draft = new SituationDraft().may(CHARGE_AIR_TEMP_OUT, 90, 105, 0.3);
    assertThat(Story.words(story.lasts(1, draft)))
        .containsExactly("shelved broken", "raised charge-air-warm");
    assertThat(story.told.getFirst().text()).startsWith("The rule broken broke and is put aside");
    assertThat(story.lasts(5, draft)).isEmpty();
  }

  @Test
  void aQuantityThatNobodyHeardDecidesNothing() throws RuleFileException {
    String steep = GOOD.replace("headroom < 20", "grade_percent < 3.0");
    Story story = new Story(RuleSet.parse("my.toml", steep), Locale.ENGLISH, UnitSystem.METRIC);
    assertThat(story.lasts(5, new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 90, 105))).isEmpty();
  }
}
