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
  /** Slow down before a climb that cannot be held at this speed. */
  CLIMB_AHEAD("climb-ahead"),
  /** Back under the limit: wait before pulling hard again. */
  RECOVER("recover"),
  /** Let the engine idle before it is switched off. */
  IDLE("idle"),
  /** Stop where that can be done and look: something may be lost. */
  STOP_AND_LOOK("stop-and-look"),
  /** The fan may not have engaged. */
  CHECK_FAN("check-fan"),
  /** The pump of the charge cooler's circuit may stand. */
  CHECK_PUMP("check-pump"),
  /** A cooler moves less heat than it did. */
  CHECK_COOLER("check-cooler"),
  /** A channel that matters is no longer heard. */
  CHECK_SENSOR("check-sensor"),
  /** The battery is not charged. */
  CHECK_CHARGING("check-charging"),
  /** A limit is a default that nobody has confirmed. */
  CONFIRM_LIMIT("confirm-limit"),
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
