package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.dialogue.Dialogue;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ReadOnlyGate;

/**
 * One command after the other over an open link, always through the read-only gate. Waits in short
 * slices, so that a sign of life and the wish to stop get through. Reader thread only.
 */
final class AdapterPort implements AutoCloseable {
  private static final Duration SLICE = Duration.ofMillis(100);
  private static final Duration RESYNC_PATIENCE = Duration.ofSeconds(1);
  private static final byte[] LONE_RETURN = {'\r'};

  /** ISO 15765-4: P2* is 5 s after "response pending"; half a second for the adapter. */
  private static final Duration PENDING_PATIENCE = Duration.ofMillis(5500);

  private static final Duration LONGEST_REPLY = Duration.ofSeconds(20);

  private final ReadOnlyGate gate;
  private final LinkClock clock;
  private final Pulse pulse;
  private final Duration leastGap;
  private final Dialogue dialogue = new Dialogue();
  private long lastTextNanoTime;
  private long lastRequestNanoTime;
  private boolean promptWasHeard;

  private AdapterPort(Link link, LinkClock clock, Pulse pulse, Duration leastGap) {
    this.gate = ReadOnlyGate.before(link);
    this.clock = clock;
    this.pulse = pulse;
    this.leastGap = leastGap;
    this.lastTextNanoTime = clock.nanoTime();
    this.lastRequestNanoTime = lastTextNanoTime - leastGap.toNanos();
  }

  /**
   * Opens a source.
   *
   * @param leastGap least span between the starts of two requests to the vehicle; zero or more
   */
  static AdapterPort open(LinkSource source, Pulse pulse, Duration leastGap) throws LinkException {
    return new AdapterPort(source.open(), source.clock(), pulse, leastGap);
  }

  String address() {
    return gate.address();
  }

  /** When the last byte that belongs to a text arrived; the prompt is none. */
  long lastTextNanoTime() {
    return lastTextNanoTime;
  }

  /**
   * Sends a command and waits for its reply. A request whose answer has begun is given the time
   * that a control unit may take after "response pending". Silence also when the reader is to stop.
   */
  Reply ask(String command, Duration patience) throws LinkException {
    boolean isForVehicle = !command.startsWith("AT");
    if (isForVehicle) {
      keepGap();
    }
    Optional<Reply.Restarted> uninvited = Dialogue.uninvited(gate.read(Duration.ZERO));
    if (uninvited.isPresent()) {
      return uninvited.get();
    }
    gate.write(dialogue.begin(command));
    return await(patience, isForVehicle ? PENDING_PATIENCE : Duration.ZERO);
  }

  private void keepGap() {
    try {
      long due = lastRequestNanoTime + leastGap.toNanos();
      clock.pause(Duration.ofNanos(due - clock.nanoTime()));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    lastRequestNanoTime = clock.nanoTime();
  }

  /**
   * Ends whatever the adapter is busy with after a missing prompt.
   *
   * @return whether it is ready for the next command
   */
  boolean resynchronise() throws LinkException {
    if (!promptWasHeard) {
      return false;
    }
    dialogue.begin("");
    gate.write(LONE_RETURN);
    return !(await(RESYNC_PATIENCE, Duration.ZERO) instanceof Reply.Silence);
  }

  private Reply await(Duration patience, Duration patienceOnceBegun) throws LinkException {
    long start = clock.nanoTime();
    long deadline = start + patience.toNanos();
    while (pulse.goesOn()) {
      Duration left = Duration.ofNanos(deadline - clock.nanoTime());
      if (!left.isPositive()) {
        break;
      }
      byte[] came = gate.read(left.compareTo(SLICE) < 0 ? left : SLICE);
      Optional<Reply> reply = accept(came);
      if (reply.isPresent()) {
        return reply.get();
      }
      if (came.length > 0) {
        long longer = clock.nanoTime() + patienceOnceBegun.toNanos();
        deadline = Math.max(deadline, Math.min(longer, start + LONGEST_REPLY.toNanos()));
      }
    }
    return dialogue.giveUp();
  }

  private Optional<Reply> accept(byte[] came) {
    for (byte one : came) {
      if (one > ' ' && one != '>') {
        lastTextNanoTime = clock.nanoTime();
      }
      promptWasHeard |= one == '>';
    }
    return dialogue.accept(came);
  }

  @Override
  public void close() {
    gate.close();
  }
}
