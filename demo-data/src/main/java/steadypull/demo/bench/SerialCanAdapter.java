package steadypull.demo.bench;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.PriorityQueue;

/**
 * An adapter that passes CAN frames as lines of text and does nothing else: no requests, no
 * formatting, no flow control (sheet of transports, section 5). Frames of control units come
 * unasked as soon as they are on the bus, if channel and rate are right.
 */
final class SerialCanAdapter implements BenchAdapter {
  private static final int LONGEST_LINE = 64;
  private static final String DONE = "\r";
  private static final String REFUSED = "\u0007";
  private static final long COMMAND_NANOS = 300_000;
  private static final int FRAME_BITS = 150;
  private static final int MOST_WAITING = 2048; // characters for the serial line
  private static final double NANOS = 1e9;

  private final BenchSettings settings;
  private final VehicleBus bus;
  private final Outlet outlet;
  private final UnaskedEvents events;
  private final StringBuilder line = new StringBuilder();
  private final PriorityQueue<CanFrame> coming =
      new PriorityQueue<>(Comparator.comparingLong(CanFrame::nanos));
  private final Chatter chatter;
  private SerialCanChannel channel = new SerialCanChannel();

  SerialCanAdapter(BenchSettings settings) {
    this.settings = settings;
    bus = new VehicleBus(settings);
    outlet = new Outlet(settings.adapter().characterNanos());
    events = new UnaskedEvents(settings.faults());
    chatter = new Chatter(settings.vehicle());
  }

  @Override
  public void hear(byte character, long nanos) {
    live(nanos);
    if (character == '\r') {
      String command = line.toString();
      line.setLength(0);
      outlet.print(perform(command, nanos), nanos + COMMAND_NANOS);
    } else if (character != '\n' && line.length() < LONGEST_LINE) {
      line.append((char) (character & 0xFF));
    }
  }

  @Override
  public byte[] take(long nanos) {
    live(nanos);
    return outlet.take(nanos);
  }

  @Override
  public OptionalLong nextNanos() {
    CanFrame next = coming.peek();
    OptionalLong frame = next == null ? OptionalLong.empty() : OptionalLong.of(next.nanos());
    OptionalLong heard =
        isHearing() ? Moments.earlier(frame, chatter.nextNanos()) : OptionalLong.empty();
    return Moments.earlier(outlet.nextNanos(), Moments.earlier(heard, events.nextNanos()));
  }

  /** Lets frames arrive and power fail up to a moment. */
  private void live(long nanos) {
    for (Optional<Fault> due = events.take(nanos); due.isPresent(); due = events.take(nanos)) {
      suffer(due.get());
    }
    if (isHearing() && bus.isAwake(nanos)) {
      coming.addAll(chatter.until(nanos));
    } else {
      chatter.skip(nanos);
    }
    while (!coming.isEmpty() && coming.peek().nanos() <= nanos) {
      arrive(coming.remove());
    }
  }

  private boolean isHearing() {
    return channel.isOpen() && channel.bitsPerSecond() == bus.protocol().bitsPerSecond();
  }

  /** Without power everything is forgotten, and nothing tells so. */
  private void suffer(Fault fault) {
    switch (fault.kind()) {
      case VANISH, LV_RESET, REBOOT -> {
        channel = new SerialCanChannel();
        coming.clear();
        line.setLength(0);
        outlet.cut((long) (fault.fromSeconds() * NANOS));
      }
      default -> {}
    }
  }

  private void arrive(CanFrame frame) {
    if (!channel.isOpen()) {
      return;
    }
    boolean isFull = outlet.backlog(frame.nanos()) > MOST_WAITING;
    if (isFull || settings.has(Fault.Kind.BUFFER_FULL, frame.nanos() / NANOS)) {
      channel.lost();
    } else {
      String text = SerialCanLine.of(frame, bus.protocol().isLong());
      outlet.print(text + channel.stamp(frame.nanos()) + DONE, frame.nanos());
    }
  }

  private String perform(String command, long nanos) {
    if (command.isEmpty()) {
      return REFUSED;
    }
    return switch (command.charAt(0)) {
      case 'V' -> command.equals("V") ? "V1013" + DONE : REFUSED;
      case 'N' -> command.equals("N") ? "NSPUL" + DONE : REFUSED;
      case 't', 'T' -> send(command, nanos);
      case 'r', 'R' -> channel.isSending() && isFrame(command) ? DONE : REFUSED;
      default -> channel.answer(command).map(text -> text + DONE).orElse(REFUSED);
    };
  }

  private static boolean isFrame(String command) {
    return SerialCanLine.read(command, 0).isPresent();
  }

  private String send(String command, long nanos) {
    Optional<CanFrame> frame = SerialCanLine.read(command, nanos + frameNanos());
    if (frame.isEmpty() || !channel.isSending()) {
      return REFUSED;
    }
    if (hasBusFault(nanos) || channel.bitsPerSecond() != bus.protocol().bitsPerSecond()) {
      channel.failed();
    } else if (bus.protocol().isCan() && isLong(command) == bus.protocol().isLong()) {
      coming.addAll(bus.can().hear(frame.get()));
    }
    return (isLong(command) ? "Z" : "z") + DONE;
  }

  private boolean hasBusFault(long nanos) {
    return List.of(Fault.Kind.CAN_ERROR, Fault.Kind.BUS_ERROR, Fault.Kind.BUS_BUSY).stream()
        .anyMatch(kind -> settings.has(kind, nanos / NANOS));
  }

  private static boolean isLong(String command) {
    return command.startsWith("T");
  }

  private long frameNanos() {
    return (long) (FRAME_BITS * NANOS / bus.protocol().bitsPerSecond());
  }
}
