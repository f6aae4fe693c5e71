package steadypull.demo.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import steadypull.adapter.ReaderSettings.Pace;

/** What the reader makes of a link, in virtual time: the same on every machine. */
class PaceTest {
  private static final double LEARNING_SECONDS = 30;

  @ParameterizedTest
  @MethodSource("steadypull.demo.pace.LinkTiming#all")
  void fullPaceUsesAlmostAllThatTheLinkCanCarry(LinkTiming timing) {
    PaceFigures run = PaceRun.measure(timing, Pace.FULL, LEARNING_SECONDS, 60);
    PaceFigures loop = SinglesLoop.repeat(run);

    assertThat(run.shareOfBest()).isBetween(0.95, 1.0);
    double gain = run.valuesPerSecond() / loop.valuesPerSecond();
    assertThat(gain).isGreaterThan(timing.answerMillis() == 25 ? 4 : 2.3);
  }

  // A slow link stretches the fast class evenly; the others keep their due times.
  @ParameterizedTest
  @MethodSource("steadypull.demo.pace.LinkTiming#all")
  void everyClassKeepsItsShareAtFullPace(LinkTiming timing) {
    PaceFigures run = PaceRun.measure(timing, Pace.FULL, LEARNING_SECONDS, 120);

    double fast = run.rate(TimedVehicle.FAST);
    assertThat(run.leastRate(TimedVehicle.FAST)).isCloseTo(fast, within(0.1 * fast));
    assertThat(run.leastRate(TimedVehicle.MEDIUM)).isGreaterThan(0.95);
    assertThat(run.leastRate(TimedVehicle.SLOW)).isGreaterThan(0.09);
  }

  @Test
  void politePaceLeavesTheBusAloneHoweverFastTheLinkIs() {
    PaceFigures run = PaceRun.measure(new LinkTiming(2_000_000, 2), Pace.POLITE, 30, 120);

    assertThat(run.requests() / run.seconds()).isLessThanOrEqualTo(20);
    assertThat(run.rate(TimedVehicle.FAST)).isCloseTo(4, within(0.2));
    assertThat(run.rate(TimedVehicle.MEDIUM)).isCloseTo(1, within(0.1));
    assertThat(run.rate(TimedVehicle.SLOW)).isCloseTo(0.1, within(0.02));
  }

  // Worked by hand from the formula: 6 characters of 86.8 us, two frames of 0.25 ms around 8 ms of
  // answer time, 20 characters for the line and 2 for the end.
  @Test
  void oneParameterTakesWhatTheFormulaSays() {
    LinkTiming timing = new LinkTiming(115_200, 8);

    assertThat(timing.nanosForParameters(1, 2) / 1e6)
        .isCloseTo(6 * 0.0868 + 0.25 + 8 + 0.25 + 20 * 0.0868 + 2 * 0.0868, within(0.001));
  }

  // Two parameters of one byte each: a mixture of two in one frame beats two requests.
  @Test
  void leastTimeIsThatOfTheBestMixture() {
    LinkTiming timing = new LinkTiming(115_200, 8);
    BestPace best = new BestPace(timing, List.of(new BestPace.Kind(1, 2, 200)));

    assertThat(best.leastNanos()).isCloseTo(100.0 * timing.nanosForParameters(2, 2), within(1.0));
  }
}
