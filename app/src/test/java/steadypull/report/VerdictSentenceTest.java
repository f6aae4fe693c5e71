package steadypull.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.compare.Comparison;
import steadypull.compare.Verdict;

/** The sentence claims what its interval bears, and no more. */
class VerdictSentenceTest {
  private static ComparisonWords words(InventedComparison invented) {
    return words(invented.build(), Locale.ENGLISH, UnitSystem.METRIC);
  }

  private static ComparisonWords words(Comparison found, Locale locale, UnitSystem units) {
    return new ComparisonWords(found, locale, new QuantityFormat(locale, units));
  }

  @Test
  void provenGainIsClaimedWithItsRangeAndAsksForNothing() {
    ComparisonWords words = words(InventedComparison.proven());

    assertThat(words.sentence())
        .isEqualTo("Proven: charge coolant settles 12.0° cooler at the same load (9.8° to 14.1°).");
    assertThat(words.missing()).isEmpty();
  }

  @Test
  void likelyGainSaysWhatItsProofAsksFor() {
    ComparisonWords words =
        words(InventedComparison.proven().verdict(Verdict.LIKELY).runs(2, true));

    assertThat(words.claim()).startsWith("Likely: charge coolant settles 12.0° cooler");
    assertThat(words.missing())
        .contains(
            "To prove it: at least three runs a side (2 before and 2 after so far); runs on two"
                + " days a side, or before, after and before again.");
  }

  @Test
  void likelyGainUnderTheSmallestDetectableOneAsksForMore() {
    ComparisonWords words =
        words(InventedComparison.proven().verdict(Verdict.LIKELY).gain(2.5, 4, 5.5));

    assertThat(words.missing().orElseThrow())
        .contains("a change above 3.2°, the smallest that these runs could have shown")
        .doesNotContain("runs a side");
  }

  @Test
  void whatGotHotterIsSaidWithoutASign() {
    ComparisonWords words = words(InventedComparison.proven().gain(-6.2, -5, -3.9));

    assertThat(words.claim())
        .isEqualTo("Proven: charge coolant settles 5.0° hotter at the same load (3.9° to 6.2°).");
  }

  @Test
  void openGainNamesBothDirectionsAndNoFigureOfItsOwn() {
    ComparisonWords words = words(InventedComparison.open());

    assertThat(words.claim())
        .isEqualTo(
            "Not proven yet: at the same load charge coolant may settle anywhere from 1.0° hotter"
                + " to 3.4° cooler.");
    assertThat(words.missing().orElseThrow())
        .contains("(1 before and 1 after so far)", "no longer spans no change at all");
  }

  @Test
  void excludedDifferenceIsAStatementOfItsOwn() {
    ComparisonWords words = words(InventedComparison.open().equivalentWithin(3));

    assertThat(words.sentence())
        .isEqualTo(
            "No difference larger than 3.0°: charge coolant settles alike at the same load.");
  }

  // A thermostat or too short a pull: more coolant shows in a minute, where it settles does not.
  @Test
  void gainThatOnlyDelaysIsNotSaidToSettle() {
    ComparisonWords words =
        words(
            InventedComparison.proven()
                .verdict(Verdict.NOT_PROVEN)
                .delayVerdict(Verdict.LIKELY)
                .withoutSettledGain());

    assertThat(words.claim())
        .isEqualTo(
            "Likely: after 60 s charge coolant is 9.4° cooler at the same load (8.1° to 10.6°);"
                + " settled, nothing is proven yet.");
  }

  @Test
  void coolantThatOnlyDelaysIsSaidToDoSo() {
    ComparisonWords words =
        words(
            InventedComparison.proven()
                .verdict(Verdict.NOT_PROVEN)
                .gain(-1.5, 0, 1.6)
                .equivalentWithin(2));

    assertThat(words.claim())
        .isEqualTo(
            "Proven: only delayed. After 60 s charge coolant is 9.4° cooler (8.1° to 10.6°), but it"
                + " settles alike, within 2.0°.");
    assertThat(words.missing()).isEmpty();
  }

  @Test
  void nothingToldIsNoClaim() {
    ComparisonWords words = words(InventedComparison.open().withoutSettledGain());

    assertThat(words.claim())
        .isEqualTo("Not proven yet: these runs do not tell where charge coolant settles.");
  }

  @Test
  void dayBesideTheLimitIsSaidToBeCalculated() {
    assertThat(words(InventedComparison.proven()).onOneDay())
        .contains(
            "At 35 °C outside, charge coolant would have reached its limit of 92° after 2:27"
                + " before the change; now it would settle 7° under it.");
    assertThat(words(InventedComparison.proven().neverReaches()).onOneDay().orElseThrow())
        .contains("would have settled 5° over its limit of 92°");
    assertThat(words(InventedComparison.proven().withoutLimit()).onOneDay()).isEmpty();
  }

  @Test
  void coolantOfTheEngineIsToldInDegreesOfItsOwn() {
    ComparisonWords words = words(InventedComparison.proven().coolant());

    assertThat(words.onOneDay().orElseThrow()).contains("settle 22° under it");
    assertThat(words.limitOnScale()).hasValue(112);
  }

  @Test
  void imperialReadersGetTheirDegrees() {
    ComparisonWords words =
        words(InventedComparison.proven().build(), Locale.ENGLISH, UnitSystem.IMPERIAL);

    // 12 K are 21.6 degF of difference, 92 degC are 197.6 degF, 35 degC are 95 degF.
    assertThat(words.claim()).contains("21.6° cooler");
    assertThat(words.onOneDay().orElseThrow()).contains("At 95 °F", "limit of 198°");
  }

  @Test
  void germanSaysTheSame() {
    ComparisonWords words =
        words(InventedComparison.proven().build(), Locale.GERMAN, UnitSystem.METRIC);

    assertThat(words.sentence())
        .isEqualTo(
            "Bewiesen: der Ladekreis wird bei gleicher Last auf Dauer 12,0° kühler (9,8° bis"
                + " 14,1°).");
  }

  @Test
  void everyTextIsThereInBothLanguages() {
    assertThat(keys(Locale.GERMAN)).isEqualTo(keys(Locale.ENGLISH)).hasSizeGreaterThan(100);
  }

  private static Set<String> keys(Locale locale) {
    return new TreeSet<>(
        ResourceBundle.getBundle(
                "steadypull.report.ReportWords",
                locale,
                ResourceBundle.Control.getNoFallbackControl(
                    ResourceBundle.Control.FORMAT_PROPERTIES))
            .keySet());
  }
}
