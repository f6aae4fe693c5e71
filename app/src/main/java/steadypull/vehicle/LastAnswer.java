package steadypull.vehicle;

import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A costly question whose last answer is remembered, in memory alone: nothing here tells what was
 * asked. Any thread; two that ask at once may both do the work.
 */
final class LastAnswer {
  private final UnaryOperator<String> costly;
  private final AtomicReference<@Nullable Remembered> last = new AtomicReference<>();

  LastAnswer(UnaryOperator<String> costly) {
    this.costly = costly;
  }

  /** The answer; remembered if the same was asked last. */
  String to(String question) {
    Remembered known = last.get();
    if (known != null && known.question.equals(question)) {
      return known.answer;
    }
    String answer = costly.apply(question);
    last.set(new Remembered(question, answer));
    return answer;
  }

  /** No record: its text would tell the question. */
  private static final class Remembered {
    private final String question;
    private final String answer;

    Remembered(String question, String answer) {
      this.question = question;
      this.answer = answer;
    }
  }
}
