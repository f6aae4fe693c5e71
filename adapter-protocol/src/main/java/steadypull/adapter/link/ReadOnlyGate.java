package steadypull.adapter.link;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;

/**
 * The last thing before the wire: lets through what only reads and refuses everything else,
 * whatever asked for it. Every byte to an adapter goes through one gate.
 *
 * <p>One {@link #write} is one line of the adapter's text dialogue with its carriage return at the
 * end and nowhere else. A lone carriage return makes an adapter repeat its last command, which may
 * come from another program; it passes only after a line of ours was answered by a prompt.
 *
 * <p>Used by one thread at a time, like the link behind it.
 */
public final class ReadOnlyGate implements Link {
  private static final byte PROMPT = '>';

  /** Lines shorter than this are copied into an array that is there already. */
  private static final int LONGEST_KEPT = 32;

  private final Link wire;
  private boolean speaksSerialCan;
  private boolean lineIsOpen;
  private boolean lastCommandIsOurs;
  private final byte[][] copies = new byte[LONGEST_KEPT][];

  private ReadOnlyGate(Link wire) {
    this.wire = wire;
    Arrays.setAll(copies, byte[]::new);
  }

  /**
   * Puts a gate before a link; from here on the link is used through the gate only. A link that is
   * a gate already stays as it is. Serial ports and sockets are never handed out without one.
   */
  public static ReadOnlyGate before(Link wire) {
    return wire instanceof ReadOnlyGate gate ? gate : new ReadOnlyGate(wire);
  }

  /**
   * Tells whether a line, without its carriage return, only reads: a request of SAE J1979 services
   * 01, 02, 03, 07, 09, 0A or ISO 14229 service 22, or an adapter command of the list.
   */
  public static boolean permits(String line) {
    return ReadRequests.permits(line);
  }

  /**
   * Tells whether a line to a serial CAN adapter, without its carriage return, only reads: a single
   * frame to a diagnostic request identifier with one of the same requests, its flow control, or a
   * setting of the list.
   */
  public static boolean permitsSerialCan(String line) {
    return SerialCanRequests.permits(line);
  }

  /**
   * From here on the gate guards the dialogue of a serial CAN adapter: lines of the other dialogue
   * are refused, because hex digits and letters mean other things there. There is no way back.
   */
  public void guardSerialCan() {
    speaksSerialCan = true;
  }

  @Override
  public String address() {
    return wire.address();
  }

  /**
   * Sends one permitted line.
   *
   * @throws RefusedRequestException if the bytes are anything else; nothing is sent then
   */
  @Override
  public void write(byte[] bytes) throws LinkException {
    byte[] line = copied(bytes);
    if (speaksSerialCan || !CurrentDataLine.isOne(line)) {
      requirePermitted(new String(line, StandardCharsets.ISO_8859_1));
    }
    lineIsOpen = true;
    wire.write(line);
  }

  /** What is judged is what is sent, whatever happens to the caller's array meanwhile. */
  private byte[] copied(byte[] bytes) {
    if (bytes.length >= copies.length) {
      return bytes.clone();
    }
    byte[] copy = copies[bytes.length];
    System.arraycopy(bytes, 0, copy, 0, bytes.length);
    return copy;
  }

  private void requirePermitted(String text) {
    boolean isRepetition = text.equals("\r") && !speaksSerialCan;
    if (isRepetition ? !lastCommandIsOurs : !isPermittedLine(text)) {
      throw new RefusedRequestException(text);
    }
  }

  private boolean isPermittedLine(String text) {
    if (!text.endsWith("\r")) {
      return false;
    }
    String line = text.substring(0, text.length() - 1);
    return speaksSerialCan ? permitsSerialCan(line) : permits(line);
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    byte[] came = wire.read(patience);
    notePrompt(came, came.length);
    return came;
  }

  @Override
  public int read(byte[] into, long patienceNanos) throws LinkException {
    int count = wire.read(into, patienceNanos);
    notePrompt(into, count);
    return count;
  }

  private void notePrompt(byte[] came, int count) {
    for (int i = 0; i < count && !lastCommandIsOurs; i++) {
      lastCommandIsOurs = came[i] == PROMPT && lineIsOpen;
    }
  }

  @Override
  public void close() {
    wire.close();
  }
}
