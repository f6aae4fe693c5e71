package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LastAnswerTest {
  private final List<String> worked = new ArrayList<>();
  private final LastAnswer last =
      new LastAnswer(
          question -> {
            worked.add(question);
            return "hash of " + question;
          });

  // An adapter that comes and goes reconnects every few seconds, always to the same vehicle.
  @Test
  void theSameQuestionAskedAgainCostsNothing() {
    assertThat(last.to("A")).isEqualTo("hash of A");
    assertThat(last.to("A")).isEqualTo("hash of A");
    assertThat(last.to(new String(new char[] {'A'}))).isEqualTo("hash of A");

    assertThat(worked).containsExactly("A");
  }

  @Test
  void anotherQuestionIsAnsweredAnewAndTakesThePlaceOfTheOneBefore() {
    last.to("A");
    assertThat(last.to("B")).isEqualTo("hash of B");
    assertThat(last.to("A")).isEqualTo("hash of A");

    assertThat(worked).containsExactly("A", "B", "A");
  }
}
