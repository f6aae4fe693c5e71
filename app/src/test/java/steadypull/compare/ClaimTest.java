package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import steadypull.thermal.Belief;

/** The rules of the verdict, on gains whose draws are normal. */
class ClaimTest {
  private static final Caveats ENGLISH = new Caveats(Locale.ENGLISH);
  private static final LocalDate DAY = LocalDate.of(2031, 5, 1);

  private static Claim normal(double gain, double deviation) {
    return new Claim(
        new Belief(gain - 1.6449 * deviation, gain, gain + 1.6449 * deviation),
        gain - 1.96 * deviation,
        gain + 1.96 * deviation);
  }

  /** Runs before, after, before and so on by their places, each on a day. */
  private static List<Run> runs(String order, int... days) {
    List<Run> runs = new ArrayList<>();
    int place = -1;
    char last = ' ';
    for (int i = 0; i < order.length(); i++) {
      place += order.charAt(i) == last ? 0 : 1;
      last = order.charAt(i);
      Side side = last == 'b' ? Side.BEFORE : Side.AFTER;
      runs.add(HandRuns.run(side, place, DAY.plusDays(days[i])));
    }
    return runs;
  }

  private static final List<Run> FULL = runs("bbbaaa", 0, 1, 1, 5, 6, 6);

  @Test
  void aBoundThatHoldsZeroClaimsNothing() {
    assertThat(normal(1.9, 1).verdict(FULL)).isEqualTo(Verdict.NOT_PROVEN);
    assertThat(normal(-1.9, 1).verdict(FULL)).isEqualTo(Verdict.NOT_PROVEN);
  }

  @Test
  void aBoundThatExcludesZeroIsLikelyToEitherSide() {
    assertThat(normal(2.1, 1).verdict(FULL)).isEqualTo(Verdict.LIKELY);
    assertThat(normal(-2.1, 1).verdict(FULL)).isEqualTo(Verdict.LIKELY);
  }

  // 1.96 s is the smallest change that could have shown; 3.7 s less 1.64 s lies above it.
  @Test
  void threeRunsTwoDaysAndALargeGainProve() {
    assertThat(normal(3.7, 1).verdict(FULL)).isEqualTo(Verdict.PROVEN);
    assertThat(normal(-3.7, 1).verdict(FULL)).isEqualTo(Verdict.PROVEN);
    assertThat(normal(3.5, 1).verdict(FULL)).isEqualTo(Verdict.LIKELY);
  }

  @Test
  void twoRunsASideProveNothing() {
    assertThat(normal(9, 1).verdict(runs("bbbaa", 0, 1, 1, 5, 6))).isEqualTo(Verdict.LIKELY);
    assertThat(normal(9, 1).verdict(runs("bbaaa", 0, 1, 5, 6, 6))).isEqualTo(Verdict.LIKELY);
  }

  @Test
  void oneDayOnASideProvesNothing() {
    assertThat(normal(9, 1).verdict(runs("bbbaaa", 0, 0, 0, 5, 6, 6))).isEqualTo(Verdict.LIKELY);
    assertThat(normal(9, 1).verdict(runs("bbbaaa", 0, 1, 1, 5, 5, 5))).isEqualTo(Verdict.LIKELY);
  }

  @Test
  void beforeAfterBeforeStandsForTwoDays() {
    assertThat(normal(9, 1).verdict(runs("bbaaab", 0, 0, 0, 0, 0, 0))).isEqualTo(Verdict.PROVEN);
  }

  // After-before-after leaves open whether what was changed could be taken back.
  @Test
  void afterBeforeAfterDoesNot() {
    assertThat(normal(9, 1).verdict(runs("abbbaa", 0, 0, 0, 0, 0, 0))).isEqualTo(Verdict.LIKELY);
  }

  @Test
  void whatIsMissingIsSaid() {
    assertThat(ENGLISH.missing(normal(2.1, 1), runs("ba", 0, 1)))
        .hasValueSatisfying(
            text ->
                assertThat(text)
                    .contains("three runs a side", "two separate days", "could show 2.0 °C"));
    assertThat(ENGLISH.missing(normal(9, 1), FULL)).isEmpty();
  }

  @Test
  void noDifferenceIsSaidOnlyWhereBothBoundsAreWithinThreeKelvin() {
    assertThat(normal(0.5, 1).equivalentWithin()).hasValueCloseTo(2.145, within(0.001));
    assertThat(normal(0.5, 2).equivalentWithin()).isEmpty();
    assertThat(normal(2.1, 0.3).equivalentWithin()).isEmpty();
  }
}
