package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.drive.AdviceRecord;

/** How often advice worked, in a phrase. */
class AdviceRecordTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | 0 | 0 | ''",
        "1 | 0 | 0 | given once, not followed",
        "3 | 1 | 1 | given 3 times, followed once, held each time",
        "5 | 4 | 3 | given 5 times, followed 4 times, held 3 times",
        "2 | 2 | 0 | given 2 times, followed 2 times, held never"
      })
  void itIsToldInOnePhrase(int given, int followed, int held, String phrase) {
    assertThat(AdviceRecordText.of(new AdviceRecord(given, followed, held))).isEqualTo(phrase);
  }
}
