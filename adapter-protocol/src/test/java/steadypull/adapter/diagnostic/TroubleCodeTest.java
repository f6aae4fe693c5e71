package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.frame.Payload;

/** Encoding and message shapes: ISO 15031-6 (SAE J2012) and ISO 15031-5 (SAE J1979). */
class TroubleCodeTest {

  // Encoding of ISO 15031-6: letter, digit and three hex digits in two bytes.
  @ParameterizedTest
  @CsvSource({
    "01 33, P0133",
    "02 99, P0299",
    "12 34, P1234",
    "22 63, P2263",
    "00 7A, P007A",
    "41 23, C0123",
    "81 23, B0123",
    "92 34, B1234",
    "C1 00, U0100",
    "D0 0A, U100A",
    "3F FF, P3FFF",
    "FF FF, U3FFF"
  })
  void twoBytesAreALetterADigitAndThreeHexDigits(String bytes, String text) {
    Payload payload = Payload.ofHex(bytes);

    assertThat(TroubleCode.of(payload.at(0), payload.at(1))).contains(new TroubleCode(text));
  }

  @Test
  void zeroStandsForNoCode() {
    assertThat(TroubleCode.of(0, 0)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "P4000", "X0123", "P012", "P01234", "p0299", "P029G"})
  void whatIsNoCodeIsRefusedWithWhatACodeIs(String text) {
    assertThatThrownBy(() -> new TroubleCode(text))
        .hasMessageContaining("P, C, B, U")
        .hasMessageContaining("\"" + text + "\"");
  }

  // SAE J2012: P1 and P30 to P33, C1, B1, U1 and up belong to the makers; from memory.
  @ParameterizedTest
  @CsvSource({
    "P0299, true",
    "P2263, true",
    "P3400, true",
    "U0100, true",
    "P1234, false",
    "P3000, false",
    "U1000, false",
    "C2100, false"
  })
  void makersCodesAreToldFromTheStandardOnes(String text, boolean isStandard) {
    assertThat(new TroubleCode(text).isStandard()).isEqualTo(isStandard);
  }

  // SAE J1979: on CAN the number of codes comes first. Worked example: N = 2, P0133, P0299.
  @Test
  void onCanTheCodesAreCounted() {
    assertThat(read(CodeStatus.STORED, true, "43 02 01 33 02 99"))
        .containsExactly("P0133", "P0299");
    assertThat(read(CodeStatus.PENDING, true, "47 01 22 63")).containsExactly("P2263");
    assertThat(read(CodeStatus.PERMANENT, true, "4A 00")).isEmpty();
  }

  // Before CAN: always three, unused ones zero. Read as on CAN, the first byte would be a count.
  @Test
  void beforeCanTheCodesComeInThrees() {
    assertThat(read(CodeStatus.STORED, false, "43 02 01 33 02 99 00"))
        .containsExactly("P0201", "P3302", "B1900");
    assertThat(read(CodeStatus.STORED, false, "43 01 33 00 00 00 00")).containsExactly("P0133");
    assertThat(read(CodeStatus.PENDING, false, "47 00 00 00 00 00 00")).isEmpty();
  }

  @Test
  void aCodeToldTwiceIsOneCode() {
    assertThat(read(CodeStatus.STORED, true, "43 02 02 99 02 99")).containsExactly("P0299");
  }

  @ParameterizedTest
  @CsvSource({
    "true, 43 02 01 33", // less than it counts
    "true, 43 01 01 33 02 99", // more than it counts
    "true, 43", // no count
    "true, 47 00", // the answer to another service
    "true, 7F 03 11",
    "false, 43 01 33 02 99", // not three
    "false, 43 01 33 02 99 00 00 00 00"
  })
  void answerOfAnotherLengthOrServiceIsNone(boolean isCan, String hex) {
    assertThat(TroubleCodeAnswer.read(CodeStatus.STORED, isCan, Payload.ofHex(hex))).isEmpty();
  }

  @Test
  void anyBytesAreReadOrRefusedButNeverFallThrough() {
    long seed = 20260715;
    Random random = new Random(seed);
    for (int round = 0; round < 20_000; round++) {
      byte[] bytes = new byte[random.nextInt(12)];
      random.nextBytes(bytes);
      if (bytes.length > 0 && random.nextBoolean()) {
        bytes[0] = 0x43;
      }
      Payload message = Payload.of(bytes);
      for (boolean isCan : new boolean[] {true, false}) {
        TroubleCodeAnswer.read(CodeStatus.STORED, isCan, message)
            .ifPresent(
                codes ->
                    assertThat(codes.size())
                        .as("seed %d, %s", seed, message)
                        .isLessThanOrEqualTo(isCan ? message.at(1) : 3));
      }
    }
  }

  @Test
  void requestsAreTheServicesAlone() {
    assertThat(CodeStatus.STORED.request()).isEqualTo("03");
    assertThat(CodeStatus.PENDING.request()).isEqualTo("07");
    assertThat(CodeStatus.PERMANENT.request()).isEqualTo("0A");
  }

  // Names as in an open list of SAE J2012 codes; paraphrased.
  @Test
  void standardCodesAreSaidInWords() {
    assertThat(new TroubleCode("P0299").meaning(Locale.ENGLISH))
        .contains("turbocharger A underboost");
    assertThat(new TroubleCode("P0217").meaning(Locale.ENGLISH))
        .contains("engine coolant over temperature");
    assertThat(new TroubleCode("P0299").meaning(Locale.GERMANY))
        .contains("Turbolader A, Ladedruck zu niedrig");
    assertThat(new TroubleCode("P0299").meaning(Locale.FRENCH))
        .as("English where there is no translation")
        .contains("turbocharger A underboost");
  }

  @Test
  void makersCodesHaveNoGeneralMeaning() {
    assertThat(new TroubleCode("P1234").meaning(Locale.ENGLISH)).isEmpty();
  }

  @Test
  void everyMeaningBelongsToAStandardCodeInEveryLanguage() {
    ResourceBundle english = bundle(Locale.ROOT);
    ResourceBundle german = bundle(Locale.GERMAN);

    assertThat(german.getLocale()).isEqualTo(Locale.GERMAN);
    assertThat(german.keySet()).isEqualTo(english.keySet()).hasSizeGreaterThan(200);
    for (Enumeration<String> keys = english.getKeys(); keys.hasMoreElements(); ) {
      String key = keys.nextElement();
      assertThat(new TroubleCode(key).isStandard()).as(key).isTrue();
      for (String words : List.of(english.getString(key), german.getString(key))) {
        assertThat(words).as(key).isNotBlank().doesNotEndWith(".").hasSizeLessThan(80);
      }
      assertThat(german.getString(key)).as(key).isNotEqualTo(english.getString(key));
    }
  }

  private static ResourceBundle bundle(Locale language) {
    return ResourceBundle.getBundle(
        "steadypull.adapter.diagnostic.TroubleCodeWords",
        language,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static List<String> read(CodeStatus status, boolean isCan, String hex) {
    return TroubleCodeAnswer.read(status, isCan, Payload.ofHex(hex)).orElseThrow().stream()
        .map(TroubleCode::text)
        .toList();
  }
}
