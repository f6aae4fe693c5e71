package steadypull.advice;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a rule asks of the driver; the cause that it has in common with others follows from it. */
enum Answer {
  /** Take load off: the remedy is computed with the model. */
  EASE("ease"),
  /** Nothing but to know. */
  WATCH("watch"),
  /** Have the stored trouble codes read. */
  READ_CODES("read-codes"),
  /** Look after adapter and port. */
  CHECK_LINK("check-link");

  private final String word;

  Answer(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  static Optional<Answer> of(String word) {
    return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
  }

  static List<String> words() {
    return Arrays.stream(values()).map(Answer::word).toList();
  }
}
