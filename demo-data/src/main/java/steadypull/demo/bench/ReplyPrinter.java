package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Prints the frames that answer a request, each at the moment at which it was heard, as long as the
 * adapter waits; and what goes wrong on the way.
 */
final class ReplyPrinter {
  private static final long EXTENDED_NANOS = 5_000_000_000L; // P2*, ISO 15765-4
  private static final double MARKED_SHARE = 0.5;
  private static final double LATE_SHARE = 0.3;
  private static final int SMALL_BUFFER = 512;
  private static final double NANOS = 1e9;

  /** How a reply looks and after how many lines it ends. */
  record Form(AdapterMode mode, FrameText text, String end, int mostLines) {}

  private final BenchSettings settings;
  private final Outlet outlet;
  private final Random chance;
  private final List<Frame> late = new ArrayList<>();

  ReplyPrinter(BenchSettings settings, Outlet outlet) {
    this.settings = settings;
    this.outlet = outlet;
    chance = new Random(settings.seed() ^ 0x9E91L);
  }

  /**
   * Prints up to the line end of the last line.
   *
   * @param nanos when the request had gone out
   * @return whether a control unit was heard
   */
  boolean print(List<Frame> frames, Form form, long nanos) {
    List<Frame> heard = new ArrayList<>(late);
    late.clear();
    frames.stream().filter(frame -> isHeard(frame, form.mode())).forEach(heard::add);
    if (settings.has(Fault.Kind.LATE_ANSWER, nanos / NANOS) && chance.nextDouble() < LATE_SHARE) {
      late.addAll(heard);
      heard.clear();
    }
    return print(heard, form, nanos, nanos + form.mode().patienceNanos());
  }

  private boolean print(List<Frame> frames, Form form, long nanos, long firstDeadline) {
    long deadline = firstDeadline;
    int lines = 0;
    for (Frame frame : frames) {
      if (frame.nanos() > deadline || lines == form.mostLines()) {
        break;
      }
      long at = Math.max(nanos, frame.nanos());
      outlet.print(line(frame, form), at);
      lines++;
      deadline = at + (isPending(frame) ? EXTENDED_NANOS : form.mode().furtherNanos());
      if (overflows(at)) {
        outlet.print("BUFFER FULL" + form.end(), at);
        return true;
      }
    }
    long ended = lines == form.mostLines() ? nanos : deadline;
    outlet.print(lines == 0 ? "NO DATA" + form.end() : "", ended);
    return lines > 0;
  }

  private boolean overflows(long nanos) {
    boolean isSmall = settings.adapter().has(AdapterTrait.SMALL_BUFFER);
    return (isSmall && outlet.backlog(nanos) > SMALL_BUFFER)
        || settings.has(Fault.Kind.BUFFER_FULL, nanos / NANOS);
  }

  /** A line with its end, half of it where the buffer is full, wrong where it is marked. */
  private String line(Frame frame, Form form) {
    double seconds = frame.nanos() / NANOS;
    String mark = mark(seconds);
    String line = form.text().of(mark.isEmpty() ? frame : damaged(frame), form.end());
    if (settings.has(Fault.Kind.BUFFER_FULL, seconds)) {
      line = line.substring(0, line.length() / 2);
    }
    return line + mark + form.end();
  }

  private String mark(double seconds) {
    for (Fault.Kind kind : List.of(Fault.Kind.MARKED_DATA_ERROR, Fault.Kind.MARKED_RX_ERROR)) {
      if (settings.has(kind, seconds) && chance.nextDouble() < MARKED_SHARE) {
        return kind.name().replace("MARKED_", "<").replace('_', ' ');
      }
    }
    return "";
  }

  private Frame damaged(Frame frame) {
    int at = chance.nextInt(8);
    int bit = chance.nextInt(8);
    return switch (frame) {
      case CanFrame can -> can.damaged(at, bit);
      case OlderFrame older -> older.damaged(at, bit);
    };
  }

  private static boolean isHeard(Frame frame, AdapterMode mode) {
    return switch (frame) {
      case CanFrame can ->
          mode.receiveOnly.isEmpty() || mode.receiveOnly.getAsInt() == can.identifier();
      case OlderFrame older -> true;
    };
  }

  private static boolean isPending(Frame frame) {
    byte[] data =
        switch (frame) {
          case CanFrame can -> can.single();
          case OlderFrame older -> older.data();
        };
    return data.length == 3 && data[0] == 0x7F && data[2] == Refusal.RESPONSE_PENDING;
  }
}
