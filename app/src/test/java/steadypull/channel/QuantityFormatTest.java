package steadypull.channel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityFormatTest {
  private static final QuantityFormat METRIC = new QuantityFormat(Locale.UK, UnitSystem.METRIC);
  private static final QuantityFormat IMPERIAL = new QuantityFormat(Locale.US, UnitSystem.IMPERIAL);

  @Test
  void metricReadsAsMeasured() {
    assertThat(METRIC.temperature(96.4)).isEqualTo("96°");
    assertThat(METRIC.outsideTemperature(38)).isEqualTo("38 °C");
    assertThat(METRIC.speed(74.6)).isEqualTo("75 km/h");
    assertThat(METRIC.powerDigits(148.5)).isEqualTo("149");
    assertThat(METRIC.mass(7_840)).isEqualTo("7.8 t");
  }

  // F = C * 1.8 + 32, differences by 1.8 only; 1 mi = 1.609344 km; 1 hp = 0.745700 kW;
  // 1 lb = 0.45359237 kg: International Yard and Pound Agreement, 1959, and NIST Special
  // Publication 811, 2008, appendix B.8, from memory.
  @Test
  void imperialConvertsPlacesAndDifferencesEachInItsWay() {
    assertThat(IMPERIAL.temperature(100)).isEqualTo("212°");
    assertThat(IMPERIAL.temperatureDigits(-40)).isEqualTo("\u221240");
    assertThat(IMPERIAL.temperatureDifference(10)).isEqualTo("18°");
    assertThat(IMPERIAL.outsideTemperature(37.8)).isEqualTo("100 °F");
    assertThat(IMPERIAL.speed(104.60736)).isEqualTo("65 mph");
    assertThat(IMPERIAL.powerDigits(149.14)).isEqualTo("200");
    assertThat(IMPERIAL.powerUnit()).isEqualTo("hp");
    assertThat(IMPERIAL.mass(7_800)).isEqualTo("17,200 lb");
  }

  @ParameterizedTest
  @ValueSource(strings = {"en-GB", "de-DE", "sv-SE", "ar-EG", "hi-IN-u-nu-deva"})
  void nothingEverShowsANegativeZero(String tag) {
    Locale locale = Locale.forLanguageTag(tag);
    QuantityFormat format = new QuantityFormat(locale, UnitSystem.METRIC);

    assertThat(format.gradeDigits(-0.04)).isEqualTo(format.gradeDigits(0));
    assertThat(format.gradeDigits(-0.0)).isEqualTo(format.gradeDigits(0));
    assertThat(format.temperature(-0.4)).isEqualTo(format.temperature(0));
    assertThat(format.temperatureDifference(-0.3)).isEqualTo(format.temperatureDifference(0));
    assertThat(format.speedDigits(-0.2)).isEqualTo(format.speedDigits(0));
  }

  @Test
  void gradesKeepOneDecimalAndTheirSign() {
    assertThat(METRIC.gradeDigits(5)).isEqualTo("5.0");
    assertThat(METRIC.gradeDigits(-6.25)).isEqualTo("\u22126.2");
    assertThat(new QuantityFormat(Locale.GERMANY, UnitSystem.METRIC).gradeDigits(4.96))
        .isEqualTo("5,0");
  }

  @Test
  void aCountdownNeverFallsUnderFiveSeconds() {
    assertThat(METRIC.countdown(74.4)).isEqualTo("1:14");
    assertThat(METRIC.countdown(5)).isEqualTo("0:05");
    assertThat(METRIC.countdown(0.2)).isEqualTo("0:05");
    assertThat(METRIC.countdown(-3)).isEqualTo("0:05");
  }

  @Test
  void timesUseTheDigitsOfTheReader() {
    QuantityFormat format =
        new QuantityFormat(Locale.forLanguageTag("hi-IN-u-nu-deva"), UnitSystem.METRIC);

    assertThat(format.countdown(74)).isEqualTo("१:१४");
    assertThat(format.elapsed(3_723)).isEqualTo("१:०२:०३");
    assertThat(METRIC.elapsed(3_723)).isEqualTo("1:02:03");
  }
}
