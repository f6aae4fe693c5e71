package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;

class CaveatsTest {
  private static final Caveats GERMAN = new Caveats(Locale.GERMAN);

  @Test
  void everyLanguageHasEverySentence() {
    assertThat(bundle(Locale.GERMAN).keySet()).isEqualTo(bundle(Locale.ROOT).keySet());
    assertThat(GERMAN.noLoad()).startsWith("Nichts lässt sich sagen");
  }

  private static ResourceBundle bundle(Locale locale) {
    return ResourceBundle.getBundle(
        Caveats.BUNDLE,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  @Test
  void whereTheThermostatRegulatedIsSaid() {
    Caveats english = new Caveats(Locale.ENGLISH);

    assertThat(english.regulating(true, true)).isEmpty();
    assertThat(english.regulating(false, true)).hasValueSatisfying(has("before the change"));
    assertThat(english.regulating(true, false)).hasValueSatisfying(has("after the change"));
    assertThat(english.regulating(false, false)).hasValueSatisfying(has("on both sides"));
  }

  private static Consumer<String> has(String words) {
    return text -> assertThat(text).contains(words);
  }

  @Test
  void aSideWithoutRunsIsNamed() {
    assertThat(GERMAN.noRuns(Channels.ENGINE_OIL_TEMP, List.of()))
        .contains("kein Lauf hat engine_oil_temp");
  }

  @Test
  void beforeTheLastMarkTheMeasuredWindowIsSaid() {
    assertThat(GERMAN.calculated(119)).hasValueSatisfying(has("119 s"));
    assertThat(GERMAN.calculated(120)).isEmpty();
  }
}
