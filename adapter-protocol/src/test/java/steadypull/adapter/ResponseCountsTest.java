package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.Payload;

class ResponseCountsTest {
  private static final long SECOND = Duration.ofSeconds(1).toNanos();
  private static final long MINUTE = Duration.ofMinutes(1).toNanos();

  private final ResponseCounts counts = new ResponseCounts(0);

  private static MessageBuffer messages(String... payloads) {
    MessageBuffer buffer = new MessageBuffer();
    for (String hex : payloads) {
      buffer.add(new Message("7E8", Payload.ofHex(hex)));
    }
    return buffer;
  }

  private boolean isBelieved(int count, Reply reply, String... payloads) {
    return counts.isBelievable(count, reply, messages(payloads));
  }

  @Test
  void wholeAnswerProvesTheCount() {
    assertThat(counts.countFor(2, 0)).isEqualTo(2);
    assertThat(isBelieved(2, Reply.Data.PLAIN, "4104 7F")).isTrue();
    assertThat(isBelieved(2, new Reply.NoData())).as("now silence is the vehicle's").isTrue();
    assertThat(counts.countFor(2, 0)).isEqualTo(2);
  }

  @Test
  void adapterThatDoesNotKnowItIsNeverToldAgain() {
    assertThat(isBelieved(1, new Reply.NotUnderstood())).isFalse();

    assertThat(counts.countFor(1, 0)).isZero();
    assertThat(counts.countFor(2, 0)).isZero();
  }

  @Test
  void answerCutShortIsAskedAgainAndAfterTwoTheCountIsLeftOff() {
    assertThat(isBelieved(1, Reply.Data.PLAIN, "410D50")).isTrue();
    assertThat(isBelieved(3, Reply.Data.PLAIN)).isFalse();
    assertThat(counts.countFor(3, 0)).isEqualTo(3);
    assertThat(isBelieved(3, Reply.Data.PLAIN)).isFalse();

    assertThat(counts.countFor(3, 0)).isZero();
    assertThat(counts.countFor(1, 0)).as("other counts work").isEqualTo(1);
  }

  // Two damaged lines in a row look like answers cut short.
  @Test
  void countThatWorkedBeforeIsTriedAgainSoonAndOneThatNeverDidIsNot() {
    assertThat(isBelieved(1, Reply.Data.PLAIN, "410D50")).isTrue();
    for (int count : new int[] {1, 3}) {
      isBelieved(count, Reply.Data.PLAIN);
      isBelieved(count, Reply.Data.PLAIN);
      assertThat(counts.countFor(count, 0)).isZero();
      assertThat(counts.countFor(count, 19 * SECOND)).isZero();
    }

    assertThat(counts.countFor(3, 20 * SECOND)).isZero();
    assertThat(counts.countFor(1, 20 * SECOND)).isEqualTo(1);
    assertThat(isBelieved(1, Reply.Data.PLAIN)).as("one try").isFalse();
    assertThat(counts.countFor(1, 21 * SECOND)).isZero();
    assertThat(counts.countFor(1, 41 * SECOND)).isEqualTo(1);
    assertThat(isBelieved(1, Reply.Data.PLAIN, "410D50")).isTrue();
    assertThat(counts.countFor(1, 42 * SECOND)).isEqualTo(1);
  }

  // ISO 14229-1 code 78 takes the place of the line that was counted.
  @Test
  void promiseOfAnAnswerIsNoAnswer() {
    assertThat(isBelieved(1, Reply.Data.PLAIN, "7F0178")).isFalse();
    assertThat(isBelieved(1, Reply.Data.PLAIN, "7F0112")).isTrue();
  }

  @Test
  void silenceBeforeTheCountIsProvenMayBeItsFault() {
    assertThat(isBelieved(1, new Reply.NoData())).isFalse();
  }

  @Test
  void nowAndThenItIsLookedWhetherSomebodyElseAnswers() {
    assertThat(counts.countFor(1, MINUTE)).isZero();
    counts.noteUncounted(messages("7F0178", "410D50"));
    assertThat(counts.countFor(1, MINUTE + 1)).isEqualTo(1);

    assertThat(counts.countFor(1, 2 * MINUTE)).isZero();
    counts.noteUncounted(messages("410D50", "410D51"));
    assertThat(counts.countFor(1, 2 * MINUTE + 1)).as("somebody does").isZero();
  }

  @Test
  void countIsOneDigit() {
    assertThat(counts.countFor(15, 0)).isEqualTo(15);
    assertThat(counts.countFor(16, 0)).isZero();
  }
}
