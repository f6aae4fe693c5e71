package steadypull.vehicle.role;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;

class RoleWordsTest {
  private static final Pattern PLACE = Pattern.compile("\\{\\d\\}");
  private static final RoleFinding BEFORE =
      new RoleFinding.Proposed(
          Channels.CHARGE_AIR_TEMP_IN,
          "01.77.2",
          RoleFinding.Confidence.CLEAR,
          new Reason.HotAsCompressed(158, 240, 26, 110));

  @Test
  void aReasonCarriesItsFigures() {
    assertThat(words(Locale.ENGLISH, UnitSystem.METRIC).because(BEFORE))
        .contains("158°", "240 kPa", "26°", "110°", "before the charge cooler");
  }

  /** 158 degC = 316.4 degF; 240 kPa = 34.8 psi (NIST SP 811, appendix B.8: 6.894757 kPa). */
  @Test
  void aReasonSpeaksTheReadersUnits() {
    assertThat(words(Locale.ENGLISH, UnitSystem.IMPERIAL).because(BEFORE))
        .contains("316°", "35 psi")
        .doesNotContain("kPa");
  }

  @Test
  void aSensorIsNamedAsTheStandardNamesItsParameter() {
    RoleWords words = words(Locale.ENGLISH, UnitSystem.METRIC);
    assertThat(words.sensor("01.77.2")).isEqualTo("charge air sensor 2 (01.77.2)");
    assertThat(words.sensor("01.75.3")).isEqualTo("turbine inlet sensor A (01.75.3)");
    assertThat(words.sensor("01.0F")).isEqualTo("intake air sensor (01.0F)");
    assertThat(words.sensor("22.1E1C.0")).isEqualTo("22.1E1C.0");
  }

  @Test
  void everySensorInQuestionHasANameInEveryLanguage() {
    for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
      RoleWords words = words(locale, UnitSystem.METRIC);
      assertThat(Medium.allSignals())
          .allSatisfy(
              key ->
                  assertThat(words.sensor(key)).endsWith("(" + key + ")").hasSizeGreaterThan(12));
    }
  }

  @Test
  void germanSaysWhatEnglishSaysWithTheSameFigures() {
    ResourceBundle english = bundle(Locale.ENGLISH);
    ResourceBundle german = bundle(Locale.GERMAN);
    assertThat(german.getLocale()).isEqualTo(Locale.GERMAN);
    assertThat(german.keySet()).isEqualTo(english.keySet());
    for (String key : english.keySet()) {
      assertThat(places(german.getString(key))).as(key).isEqualTo(places(english.getString(key)));
      // An apostrophe would silently swallow the figures of its sentence.
      assertThat(english.getString(key) + german.getString(key)).as(key).doesNotContain("'");
    }
  }

  private static List<String> places(String text) {
    return PLACE.matcher(text).results().map(MatchResult::group).sorted().toList();
  }

  private static ResourceBundle bundle(Locale locale) {
    return ResourceBundle.getBundle(
        "steadypull.vehicle.role.RoleWords",
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static RoleWords words(Locale locale, UnitSystem units) {
    return new RoleWords(locale, new QuantityFormat(locale, units));
  }
}
