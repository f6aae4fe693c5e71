package steadypull.adapter.dialogue;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * One command at a time: the line goes out, bytes come in however they are cut, and with the prompt
 * the reply is complete. Neither reads nor writes. Used by one thread at a time.
 */
public final class Dialogue {
  private static final char PROMPT = '>';
  private static final int LONGEST_REPLY = 32_768;
  private static final int LONGEST_EXCERPT = 80;

  private final StringBuilder heard = new StringBuilder();
  private String command = "";

  /**
   * Begins the next command and forgets what was heard before.
   *
   * @param command a line without its carriage return
   * @return the bytes to send
   */
  public byte[] begin(String command) {
    this.command = command;
    heard.setLength(0);
    return (command + "\r").getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * Takes bytes as they arrive. NULs are no part of the dialogue.
   *
   * @return the reply, once its prompt or far too many characters have come; bytes after the prompt
   *     belong to nothing and are dropped
   */
  public Optional<Reply> accept(byte[] bytes) {
    for (byte one : bytes) {
      if (one == PROMPT) {
        return Optional.of(ReplyText.classify(command, heard.toString()));
      }
      if (one != 0) {
        heard.append(one > 0 ? (char) one : '\uFFFD');
      }
    }
    return heard.length() > LONGEST_REPLY
        ? Optional.of(new Reply.Unexpected(excerpt(heard.toString())))
        : Optional.empty();
  }

  /** Ends a command whose prompt did not come in time. */
  public Reply giveUp() {
    return new Reply.Silence(excerpt(heard.toString()));
  }

  /**
   * Looks at bytes that came while nothing was asked.
   *
   * @return the restart that they tell of, or empty if they are of no consequence
   */
  public static Optional<Reply.Restarted> uninvited(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.US_ASCII).replace(PROMPT, '\r');
    return ReplyText.classify("", text) instanceof Reply.Restarted restarted
        ? Optional.of(restarted)
        : Optional.empty();
  }

  static String excerpt(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return line.length() <= LONGEST_EXCERPT ? line : line.substring(0, LONGEST_EXCERPT) + "...";
  }
}
