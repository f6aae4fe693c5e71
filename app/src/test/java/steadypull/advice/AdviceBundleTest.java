package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every language says everything, with the same figures in it. */
class AdviceBundleTest {
  private static final Pattern PLACE = Pattern.compile("\\{\\d\\}");

  private static ResourceBundle bundle(Locale locale) {
    return ResourceBundle.getBundle(
        "steadypull.advice.AdviceWords",
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static List<String> places(String text) {
    return PLACE.matcher(text).results().map(MatchResult::group).sorted().toList();
  }

  @Test
  void germanSaysWhatEnglishSays() {
    ResourceBundle english = bundle(Locale.ENGLISH);
    ResourceBundle german = bundle(Locale.GERMAN);
    assertThat(german.getLocale()).isEqualTo(Locale.GERMAN);
    Enumeration<String> keys = english.getKeys();
    while (keys.hasMoreElements()) {
      String key = keys.nextElement();
      assertThat(german.containsKey(key)).as(key).isTrue();
      assertThat(places(german.getString(key))).as(key).isEqualTo(places(english.getString(key)));
    }
    assertThat(german.keySet()).isEqualTo(english.keySet());
  }

  /** An apostrophe would silently swallow the figures of its sentence. */
  @Test
  void noSentenceHasAnApostrophe() {
    for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
      ResourceBundle bundle = bundle(locale);
      assertThat(bundle.keySet())
          .isNotEmpty()
          .noneMatch(key -> bundle.getString(key).contains("'"));
    }
  }
}
