package steadypull.adapter.position;

import java.util.Objects;

/** Where a receiver stands. A closed set; immutable. */
public sealed interface ReceiverState {

  /**
   * It cannot be heard; it is looked for again and again.
   *
   * @param reason one sentence for people, and what to do
   */
  record Absent(String reason) implements ReceiverState {
    public Absent {
      Objects.requireNonNull(reason);
    }
  }

  /** It speaks, but does not know yet where it is. */
  record Unfixed() implements ReceiverState {}

  /** It knows where it is. */
  record Fixed() implements ReceiverState {}

  /** It is no longer listened to. */
  record Closed() implements ReceiverState {}
}
