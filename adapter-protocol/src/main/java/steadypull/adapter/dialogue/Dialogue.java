package steadypull.adapter.dialogue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * One command at a time: the line goes out, bytes come in however they are cut, and with the prompt
 * the reply is complete. Neither reads nor writes. Used by one thread at a time.
 */
public final class Dialogue {
  private static final byte PROMPT = '>';
  private static final int USUAL_REPLY = 512;
  private static final int LONGEST_REPLY = 32_768;
  private static final int LONGEST_EXCERPT = 80;

  private byte[] heard = new byte[USUAL_REPLY];
  private int length;
  private byte[] line = {};

  /**
   * Begins the next command and forgets what was heard before.
   *
   * @param command a line without its carriage return
   * @return the bytes to send
   */
  public byte[] begin(String command) {
    byte[] bytes = (command + "\r").getBytes(StandardCharsets.US_ASCII);
    begin(bytes);
    return bytes;
  }

  /**
   * Begins the next command and forgets what was heard before.
   *
   * @param line the bytes to send, with the carriage return; unchanged until the reply is complete
   */
  public void begin(byte[] line) {
    this.line = line;
    length = 0;
  }

  /**
   * Takes bytes as they arrive. NULs are no part of the dialogue.
   *
   * @return the reply, once its prompt or far too many characters have come; bytes after the prompt
   *     belong to nothing and are dropped
   */
  public Optional<Reply> accept(byte[] bytes) {
    return accept(bytes, bytes.length) ? Optional.of(reply()) : Optional.empty();
  }

  /**
   * Takes so many bytes as they arrive. NULs are no part of the dialogue.
   *
   * @return whether the reply is complete: its prompt or far too many characters have come; bytes
   *     after the prompt belong to nothing and are dropped
   */
  public boolean accept(byte[] bytes, int count) {
    for (int i = 0; i < count; i++) {
      if (bytes[i] == PROMPT) {
        return true;
      }
      if (bytes[i] != 0 && length <= LONGEST_REPLY) {
        keep(bytes[i]);
      }
    }
    return length > LONGEST_REPLY;
  }

  private void keep(byte character) {
    if (length == heard.length) {
      heard = Arrays.copyOf(heard, 2 * length);
    }
    heard[length] = character;
    length++;
  }

  /** The line that was sent, with its carriage return. */
  public byte[] line() {
    return line;
  }

  /** What was heard so far, without NULs and prompt; {@link #length} bytes of it count. */
  public byte[] heard() {
    return heard;
  }

  /** How many bytes were heard so far. */
  public int length() {
    return length;
  }

  /** What a complete reply means. */
  public Reply reply() {
    return length > LONGEST_REPLY
        ? new Reply.Unexpected(excerpt(text()))
        : ReplyText.classify(command(), text());
  }

  private String command() {
    return new String(line, StandardCharsets.US_ASCII).strip();
  }

  private String text() {
    return new String(heard, 0, length, StandardCharsets.US_ASCII);
  }

  /** Ends a command whose prompt did not come in time. */
  public Reply giveUp() {
    return new Reply.Silence(excerpt(text()));
  }

  /**
   * Looks at bytes that came while nothing was asked.
   *
   * @return the restart that they tell of, or empty if they are of no consequence
   */
  public static Optional<Reply.Restarted> uninvited(byte[] bytes) {
    return uninvited(bytes, bytes.length);
  }

  /** Looks at so many bytes that came while nothing was asked. */
  public static Optional<Reply.Restarted> uninvited(byte[] bytes, int count) {
    if (count == 0) {
      return Optional.empty();
    }
    String text = new String(bytes, 0, count, StandardCharsets.US_ASCII).replace('>', '\r');
    return ReplyText.uninvited(text);
  }

  static String excerpt(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return line.length() <= LONGEST_EXCERPT ? line : line.substring(0, LONGEST_EXCERPT) + "...";
  }
}
