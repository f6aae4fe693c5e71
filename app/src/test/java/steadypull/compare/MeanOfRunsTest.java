package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadypull.thermal.Belief;

class MeanOfRunsTest {
  /** JCGM 100:2008, table 1: twenty readings of a temperature, degC (from memory; they agree). */
  private static final double[] TWENTY = {
    96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
    100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72
  };

  // JCGM 100:2008, 4.4.3: mean 100.145 degC, standard deviation of the mean 0.333 degC; table G.2:
  // t for 19 degrees of freedom and 90 % is 1.73.
  @Test
  void twentyReadingsOfTheGuideHaveItsMeanAndItsInterval() {
    Belief mean = MeanOfRuns.of(TWENTY, 0, 0);

    assertThat(mean.middle()).isCloseTo(100.145, within(0.0005));
    assertThat(mean.high() - mean.middle()).isCloseTo(1.73 * 0.333, within(0.002));
  }

  // Table G.2 again: one degree of freedom, 90 %: 6.31. Two runs that agree by chance prove little.
  @Test
  void twoRunsAreMuchLessSureThanTheirScatterSays() {
    Belief mean = MeanOfRuns.of(new double[] {9, 11}, 0, 0);

    assertThat(mean.middle() - mean.low()).isCloseTo(6.31, within(0.01));
  }

  @Test
  void runsThatAgreeAreNoSurerThanTheirReadings() {
    Belief mean = MeanOfRuns.of(new double[] {10, 10, 10, 10}, 0.4, 0);

    assertThat(mean.high() - mean.middle()).isCloseTo(1.645 * 0.2, within(0.001));
  }

  @Test
  void oneRunAloneHasWhatIsUsualBetweenRuns() {
    Belief mean = MeanOfRuns.of(new double[] {-10}, 0, 0.1);

    assertThat(mean.low()).isCloseTo(-11.645, within(0.001));
    assertThat(mean.high()).isCloseTo(-8.355, within(0.001));
  }
}
