package steadypull.adapter.dialogue;

import java.util.List;

/** What an adapter said between a command and its prompt. A closed set. */
public sealed interface Reply {

  /**
   * The vehicle answered.
   *
   * @param lines hex lines as received, blanks removed, upper case; none if the reply was taken on
   *     its bytes
   */
  record Data(List<String> lines) implements Reply {
    /** Data that were taken on their bytes and need no lines. */
    public static final Data PLAIN = new Data(List.of());

    public Data {
      lines = List.copyOf(lines);
    }
  }

  /** The adapter did as told. */
  record Accepted() implements Reply {}

  /**
   * The adapter told something about itself.
   *
   * @param text one or more lines, joined by a blank
   */
  record Text(String text) implements Reply {}

  /** Nobody answered in time, or nobody knows the parameter: the two look alike. */
  record NoData() implements Reply {}

  /** The adapter does not know the command; never to be repeated blindly. */
  record NotUnderstood() implements Reply {}

  /** The search found no protocol that the vehicle answers. */
  record NotConnected() implements Reply {}

  /**
   * The adapter could not use the vehicle's bus.
   *
   * @param text the adapter's words
   */
  record BusFault(String text) implements Reply {}

  /** The adapter's output buffer overflowed; the reply is incomplete. */
  record Overflowed() implements Reply {}

  /** Every line of the reply was marked as damaged. */
  record Damaged() implements Reply {}

  /** A byte reached the adapter while it was busy. */
  record Stopped() implements Reply {}

  /**
   * The adapter lost its settings: supply too low, or an internal error.
   *
   * @param text the adapter's words
   */
  record Restarted(String text) implements Reply {}

  /**
   * Text that is neither data nor known, such as an identity out of the blue.
   *
   * @param text what came, shortened
   */
  record Unexpected(String text) implements Reply {}

  /**
   * No prompt came in time.
   *
   * @param heard what came instead, shortened; empty text if nothing
   */
  record Silence(String heard) implements Reply {}
}
