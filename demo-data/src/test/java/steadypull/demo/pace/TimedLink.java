package steadypull.demo.pace;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkSource;

/**
 * An adapter and a vehicle in virtual time that take exactly what {@link LinkTiming} says. Honours
 * the number of answer lines and the prompt; without a number it waits as long as its timeout says.
 * Allocates nothing for a request for parameters, so that what is measured is the reader.
 *
 * <p>Left out: jitter of the control unit, echo and errors, adaptive timing, the operating system's
 * delays, replies that come in pieces, a second control unit.
 */
final class TimedLink implements LinkSource, Link, LinkClock {
  private static final byte[] HEX = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] HEADER = "7E8".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] NO_DATA = "NO DATA\r".getBytes(StandardCharsets.US_ASCII);
  private static final long TIMEOUT_UNIT_NANOS = 4_096_000;
  private static final int FILLER = 0xAA;
  private static final int FRAME_BYTES = 8;

  long requests;

  private final int[] answers = new int[0x100];
  private final LinkTiming timing;
  private final TimedVehicle vehicle = new TimedVehicle();
  private final byte[] payload = new byte[64];
  private final byte[] reply = new byte[512];
  private int payloadSize;
  private int replySize;
  private long now = 1_000_000_000L;
  private long promptAt = now;
  private long timeoutNanos = 0x32 * TIMEOUT_UNIT_NANOS;

  TimedLink(LinkTiming timing) {
    this.timing = timing;
  }

  /** How often each parameter was answered, by number from 0 on. */
  List<Integer> answers() {
    return Arrays.stream(answers).boxed().toList();
  }

  @Override
  public String address() {
    return "timed:" + timing.baudRate();
  }

  @Override
  public LinkClock clock() {
    return this;
  }

  @Override
  public Link open() {
    return this;
  }

  @Override
  public long nanoTime() {
    return now;
  }

  @Override
  public void pause(Duration span) {
    now += Math.max(0, span.toNanos());
  }

  @Override
  public void write(byte[] bytes) {
    if (now < promptAt || replySize > 0) {
      throw new IllegalStateException("Written before the prompt was read");
    }
    if (bytes[0] == '0' && bytes[1] == '1') {
      currentData(bytes);
    } else {
      command(new String(bytes, 0, bytes.length - 1, StandardCharsets.US_ASCII));
      promptAt = now + (bytes.length + replySize) * timing.characterNanos();
    }
  }

  private void command(String command) {
    if (command.startsWith("ATST")) {
      timeoutNanos = Integer.parseInt(command.substring(4), 16) * TIMEOUT_UNIT_NANOS;
    }
    String text =
        switch (command) {
          case "ATZ", "ATI" -> "TIMED ADAPTER";
          case "ATDPN" -> "A6";
          default -> command.startsWith("AT") ? "OK" : "NO DATA";
        };
    byte[] bytes = (text + "\r\r>").getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(bytes, 0, reply, 0, bytes.length);
    replySize = bytes.length;
  }

  private void currentData(byte[] line) {
    requests++;
    int digits = line.length - 1;
    int wanted = digits % 2 == 0 ? Integer.MAX_VALUE : value(line[digits - 1]);
    collect(line, digits / 2);
    int frames = payloadSize == 1 ? 0 : LinkTiming.lines(payloadSize);
    int printed = Math.min(wanted, frames);
    for (int frame = 0; frame < printed; frame++) {
      print(frame, frames);
    }
    if (frames == 0) {
      print(NO_DATA);
    }
    put((byte) '\r');
    put((byte) '>');
    promptAt = now + span(line.length, printed, printed == wanted);
  }

  private long span(int characters, int printed, boolean isCounted) {
    long exact = timing.nanos(characters, Math.max(1, printed));
    long last = timing.heardAfterNanos(Math.max(1, printed));
    long waited = characters * timing.characterNanos() + last + timeoutNanos;
    return isCounted ? exact : Math.max(exact, waited + 2 * timing.characterNanos());
  }

  private void collect(byte[] line, int bytes) {
    payload[0] = 0x41;
    payloadSize = 1;
    for (int i = 1; i < bytes; i++) {
      int number = value(line[2 * i]) << 4 | value(line[2 * i + 1]);
      byte[] data = vehicle.data(number);
      if (data != null) {
        answers[number]++;
        payload[payloadSize] = (byte) number;
        System.arraycopy(data, 0, payload, payloadSize + 1, data.length);
        payloadSize += 1 + data.length;
      }
    }
  }

  private void print(int frame, int frames) {
    print(HEADER);
    int at;
    int room = FRAME_BYTES - 1;
    if (frames == 1) {
      hex(payloadSize);
      at = 0;
    } else if (frame == 0) {
      hex(0x10 | payloadSize >> 8);
      hex(payloadSize);
      at = 0;
      room = FRAME_BYTES - 2;
    } else {
      hex(0x20 | frame % 16);
      at = FRAME_BYTES - 2 + (frame - 1) * (FRAME_BYTES - 1);
    }
    for (int i = at; i < at + room; i++) {
      hex(i < payloadSize ? payload[i] : FILLER);
    }
    put((byte) '\r');
  }

  private void print(byte[] text) {
    for (byte character : text) {
      put(character);
    }
  }

  private void hex(int octet) {
    put(HEX[octet >> 4 & 0x0F]);
    put(HEX[octet & 0x0F]);
  }

  private void put(byte character) {
    reply[replySize] = character;
    replySize++;
  }

  private static int value(byte digit) {
    return digit <= '9' ? digit - '0' : digit - 'A' + 10;
  }

  @Override
  public int read(byte[] into, long patienceNanos) {
    if (replySize == 0 || promptAt > now + patienceNanos) {
      now += patienceNanos;
      return 0;
    }
    now = Math.max(now, promptAt);
    int count = replySize;
    System.arraycopy(reply, 0, into, 0, count);
    replySize = 0;
    return count;
  }

  @Override
  public byte[] read(Duration patience) {
    byte[] into = new byte[reply.length];
    return Arrays.copyOf(into, read(into, patience.toNanos()));
  }

  @Override
  public void close() {}
}
