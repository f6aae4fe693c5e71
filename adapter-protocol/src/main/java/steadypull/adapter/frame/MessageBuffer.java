package steadypull.adapter.frame;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * The whole messages of one reply, in the order in which they were completed. One buffer serves
 * reply after reply: what stands in it, and every view of it, ends with the next {@link #clear}.
 * Grows to the largest reply and then allocates no more. Used by one thread.
 */
public final class MessageBuffer {
  private static final int FIRST_BYTES = 256;
  private static final int FIRST_MESSAGES = 8;

  private byte[] bytes = new byte[FIRST_BYTES];
  private int used;
  private String[] senders = new String[FIRST_MESSAGES];
  private int[] starts = new int[FIRST_MESSAGES];
  private int[] sizes = new int[FIRST_MESSAGES];
  private int count;

  /** Forgets everything, for the next reply. */
  public void clear() {
    count = 0;
    used = 0;
  }

  /**
   * Adds a whole message; the bytes are copied.
   *
   * @param sender the control unit as {@link Message#controlUnit} writes it
   * @param source where the payload stands, from an index up to, not with, another
   */
  public void add(String sender, byte[] source, int from, int to) {
    Objects.requireNonNull(sender);
    Objects.checkFromToIndex(from, to, source.length);
    int start = reserve(to - from);
    put(start, source, from, to);
    complete(sender, start, to - from);
  }

  /** Keeps room for a message that comes in parts; gives where it begins. */
  int reserve(int length) {
    int start = used;
    used += length;
    if (used > bytes.length) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, used));
    }
    return start;
  }

  /** Copies a part into room that was kept. */
  void put(int at, byte[] source, int from, int to) {
    System.arraycopy(source, from, bytes, at, to - from);
  }

  /** Adds the message that now stands in room that was kept. */
  void complete(String sender, int start, int length) {
    if (count == senders.length) {
      senders = Arrays.copyOf(senders, 2 * count);
      starts = Arrays.copyOf(starts, 2 * count);
      sizes = Arrays.copyOf(sizes, 2 * count);
    }
    senders[count] = sender;
    starts[count] = start;
    sizes[count] = length;
    count++;
  }

  /** Adds a whole message. */
  public void add(Message message) {
    byte[] payload = message.payload().toBytes();
    add(message.controlUnit(), payload, 0, payload.length);
  }

  /** How many messages there are. */
  public int count() {
    return count;
  }

  /** Who sent a message. */
  public String sender(int message) {
    return senders[Objects.checkIndex(message, count)];
  }

  /** How many payload bytes a message has. */
  public int size(int message) {
    return sizes[Objects.checkIndex(message, count)];
  }

  /** One payload byte of a message, 0 to 255. */
  public int at(int message, int index) {
    Objects.checkIndex(index, size(message));
    return bytes[starts[message] + index] & 0xFF;
  }

  /** Shows the payload of a message from an index up to, not with, another. */
  public void show(OctetWindow window, int message, int from, int to) {
    Objects.checkFromToIndex(from, to, size(message));
    window.show(bytes, starts[message] + from, starts[message] + to);
  }

  /** Shows the whole payload of a message. */
  public void show(OctetWindow window, int message) {
    show(window, message, 0, size(message));
  }

  /** A copy of one message, to keep. */
  public Message message(int message) {
    int from = starts[Objects.checkIndex(message, count)];
    return new Message(
        senders[message], Payload.of(Arrays.copyOfRange(bytes, from, from + sizes[message])));
  }

  /** Copies of all messages, to keep. */
  public List<Message> messages() {
    List<Message> copies = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      copies.add(message(i));
    }
    return copies;
  }
}
