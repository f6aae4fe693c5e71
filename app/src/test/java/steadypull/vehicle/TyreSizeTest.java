package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TyreSizeTest {

  // D = 25.4 * rim + 2 * width * series / 100 (ISO 4000-1, ETRTO): worked by hand.
  @ParameterizedTest
  @CsvSource({
    "275/70R18, 842.2",
    "205/55R16, 631.9",
    "275/60R20, 838.0",
    "205/55 R16 91V, 631.9",
    "205/55ZR16, 631.9",
    "LT275/70R18 123/120S, 842.2",
    "P275/60R20 115T, 838.0",
    "ST235/80R16, 782.4",
    "225/75R16C 121/120R, 743.9",
    "lt235/85r16, 805.9",
    "295/80R22.5 152/148M, 1043.5",
    "35x12.50R17LT 121Q, 889.0",
    "35X12.50R17, 889.0",
    "LT275/70R18E, 842.2",
    "LT275/70R18 E, 842.2",
    "LT275/70R18/E 125/122S, 842.2",
    "LT275/70R18 125/122S E, 842.2",
    "275/70R18 125/122S 10PR, 842.2",
    "275/70R18 116H M+S, 842.2",
    "225/70R19.5 G, 810.3",
    "225/65R16CP 112/110R, 698.9",
    "LT37x13.50R17 D, 939.8"
  })
  void theDesignationGivesTheFreeDiameter(String designation, double millimetres) {
    assertThat(TyreSize.of(designation).freeDiameterMetres() * 1000)
        .isCloseTo(millimetres, within(0.05));
  }

  // Catalogue diameters of common makes, from memory; their own spread is as wide as ours.
  @ParameterizedTest
  @CsvSource({
    "7.50R16, 805",
    "7.50-16, 805",
    "7.00R16LT, 778",
    "185R14C 102/100R, 650",
    "11R22.5, 1052",
    "9R22.5, 970",
    "12R22.5 152/148L, 1084",
    "165R13, 596"
  })
  void sizesWithoutASeriesComeNearTheCatalogues(String designation, double millimetres) {
    TyreSize size = TyreSize.of(designation);
    assertThat(size.freeDiameterMetres() * 1000)
        .isCloseTo(millimetres, within(millimetres * size.spread()));
  }

  // Rolling circumference 3.05 D (ETRTO's factor for radial tyres, from memory): worked by hand.
  @Test
  void itRollsALittleLessThanItsFreeDiameter() {
    TyreSize size = TyreSize.of("275/70R18");
    assertThat(size.rollingCircumferenceMetres()).isCloseTo(2.5687, within(5e-5));
    assertThat(size.rollingRadiusMetres()).isCloseTo(0.4088, within(5e-5));
    assertThat(TyreSize.of("275/60R20").rollingCircumferenceMetres())
        .isCloseTo(2.5559, within(5e-5));
    assertThat(size.spread()).isEqualTo(0.015);
  }

  @Test
  void aDiagonalTyreRollsShorter() {
    assertThat(TyreSize.of("7.50-16").rollingRadiusMetres())
        .isLessThan(TyreSize.of("7.50R16").rollingRadiusMetres());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "18",
        "275/70",
        "275R",
        "275/70R",
        "27/70R18",
        "275/70R18 hello",
        "275/70R18 bell",
        "275/70R18/2",
        "275/70R18 HLHLHLHLHLHLHLHLHLHLHLHLHLHLHLHL!",
        "big",
        "35x",
        "275/70R18 123/120S;rm"
      })
  void anythingElseIsRefusedWithWhatWasExpectedAndFound(String text) {
    assertThatThrownBy(() -> TyreSize.of(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("275/70R18")
        .hasMessageContaining("found \"" + text + "\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"999/99R99", "100/25R10"})
  void aTyreThatNobodyMakesIsRefused(String text) {
    assertThatThrownBy(() -> TyreSize.of(text)).hasMessageContaining("m diameter, found");
  }
}
