package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Units are 4.096 ms: data sheet of an AT-command adapter. */
class AnswerTimesTest {
  private static final long MILLISECOND = 1_000_000;

  private final AnswerTimes times = new AnswerTimes(0);
  private long now;

  private void answer(int count, int millis) {
    for (int i = 0; i < count; i++) {
      now += Duration.ofMillis(100).toNanos();
      times.answered(millis * MILLISECOND, now);
    }
  }

  @Test
  void nothingIsSetBeforeEnoughWasSeen() {
    answer(19, 10);

    assertThat(times.wanted()).isEqualTo(times.present());
  }

  @Test
  void patienceFollowsTheSlowestAnswerWithRoomToSpare() {
    answer(100, 20);
    answer(1, 60);
    answer(100, 20);

    // 1.5 * 60 + 20 = 110 ms, rounded up to 27 units.
    assertThat(times.wanted()).isEqualTo(27);
    times.told(27);
    assertThat(times.wanted()).isEqualTo(27);
  }

  // P2 of ISO 15765-4 is 50 ms: a quick vehicle may still take as long once.
  @Test
  void patienceIsNeverLessThanTheStandardGrants() {
    answer(200, 3);

    assertThat(times.wanted() * 4.096).isGreaterThan(55);
  }

  @Test
  void answerThatStaysAwayRaisesThePatienceForAWhile() {
    answer(200, 3);
    times.told(times.wanted());
    int learnt = times.present();

    times.missed();
    assertThat(times.wanted()).isEqualTo(2 * learnt);
    times.told(times.wanted());
    answer(10, 3);
    assertThat(times.wanted()).isEqualTo(2 * learnt);

    answer(1300, 3);
    assertThat(times.wanted()).isEqualTo(learnt);
  }

  @Test
  void raisingEndsAtTheLargestSetting() {
    for (int i = 0; i < 20; i++) {
      times.missed();
      times.told(times.wanted());
    }

    assertThat(times.wanted()).isEqualTo(0xFF);
  }

  @Test
  void answerThatWasPromisedFirstIsNoMeasure() {
    answer(100, 20);
    answer(1, 4_000);

    assertThat(times.wanted() * 4.096).isLessThan(80);
  }
}
