package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/**
 * A serial CAN adapter in memory, in the time of a manual clock, before the same scripted vehicle
 * as the other one. Written from the protocol's description, not from the program: control units
 * send the first frame of a long answer and wait for flow control, at most 75 ms.
 */
final class ScriptedSerialCan implements LinkSource {
  private static final Duration ADAPTER_LATENCY = Duration.ofMillis(2);
  private static final Duration FLOW_CONTROL_PATIENCE = Duration.ofMillis(75);
  private static final String REFUSAL = "\u0007";
  private static final Pattern FRAME = Pattern.compile("(t(...)|T(........))8(.{16})");

  final ManualClock clock = new ManualClock();
  final ScriptedVehicle vehicle;
  final List<String> sent = new ArrayList<>();

  /** When each control unit's answer begins after the request. */
  Duration answerLatency = Duration.ofMillis(8);

  /** The bit rate at which the vehicle can be heard, as the S command has it. */
  String vehicleRate = "S6";

  boolean isLong;
  boolean isMute;
  boolean acknowledgesFrames = true;
  String status = "F00";

  /** Turns every line from the adapter into what really arrives. */
  UnaryOperator<String> wire = line -> line;

  /** Frames of other traffic that come with every request. */
  String traffic = "";

  /** Whether the other traffic answers flow control too. */
  boolean repeatsTraffic;

  /** Frames on the bus while it sent at a wrong rate. */
  int disturbances;

  boolean isOpen;
  private String rate = "S0";
  private final Queue<Arrival> arrivals =
      new PriorityQueue<>(
          Comparator.comparingLong(Arrival::nanoTime).thenComparing(Arrival::order));
  private int order;
  private final List<Held> held = new ArrayList<>();
  private final Set<String> refused = new TreeSet<>();

  private record Arrival(long nanoTime, Integer order, String text) {}

  /** The rest of an answer that waits for flow control. */
  private record Held(String unit, Deque<String> frames, long deadlineNanoTime) {}

  ScriptedSerialCan(ScriptedVehicle vehicle) {
    this.vehicle = vehicle;
  }

  ScriptedSerialCan refusing(String... commands) {
    refused.addAll(Arrays.asList(commands));
    return this;
  }

  @Override
  public String address() {
    return "scripted:serial-can";
  }

  @Override
  public LinkClock clock() {
    return clock;
  }

  @Override
  public Link open() {
    arrivals.clear();
    return new ScriptedLink();
  }

  /** The adapter loses its power for a moment. */
  void restart() {
    isOpen = false;
    rate = "S0";
  }

  private void take(String line) {
    sent.add(line);
    if (isMute) {
      return;
    }
    Matcher frame = FRAME.matcher(line);
    if (frame.matches()) {
      takeFrame(frame);
    } else {
      say(refused.contains(line) ? REFUSAL : answer(line), ADAPTER_LATENCY);
    }
  }

  private String answer(String line) {
    return switch (line) {
      case "V" -> "V1013\r";
      case "F" -> isOpen ? status + "\r" : REFUSAL;
      case "O", "C" -> turned(line.equals("O"));
      case "S5", "S6" -> rated(line);
      case "Z0" -> isOpen ? REFUSAL : "\r";
      default -> REFUSAL;
    };
  }

  private String turned(boolean opens) {
    String answer = isOpen == opens ? REFUSAL : "\r";
    isOpen = opens;
    return answer;
  }

  private String rated(String line) {
    if (isOpen) {
      return REFUSAL;
    }
    rate = line;
    return "\r";
  }

  private void takeFrame(Matcher frame) {
    if (!isOpen) {
      say(REFUSAL, ADAPTER_LATENCY);
      return;
    }
    if (acknowledgesFrames) {
      say(frame.group(2) == null ? "Z\r" : "z\r", ADAPTER_LATENCY);
    }
    if (!rate.equals(vehicleRate)) {
      disturbances++;
      return;
    }
    if (!traffic.isEmpty() && (repeatsTraffic || frame.group(4).startsWith("0"))) {
      say(traffic, ADAPTER_LATENCY);
    }
    if ((frame.group(2) == null) == isLong) {
      onBus(isLong ? frame.group(3) : frame.group(2), frame.group(4));
    }
  }

  private void onBus(String identifier, String data) {
    if (data.startsWith("30")) {
      release(identifier);
    } else if (data.startsWith("0")) {
      int length = Integer.parseInt(data.substring(0, 2), 16);
      vehicle.header = identifier;
      String lines = vehicle.answer(data.substring(2, 2 + 2 * length));
      held.clear();
      lines
          .lines()
          .filter(line -> line.matches("[0-9A-F]+"))
          .forEach(line -> answerWith(line, isLong ? 8 : 3));
    }
  }

  private void answerWith(String line, int digits) {
    String unit = line.substring(0, digits);
    String text = (isLong ? "T" : "t") + unit + "8" + line.substring(digits) + "\r";
    if (line.charAt(digits) == '2') {
      held.getLast().frames().add(text);
      return;
    }
    say(text, answerLatency);
    if (line.charAt(digits) == '1') {
      long deadline = clock.nanoTime() + answerLatency.plus(FLOW_CONTROL_PATIENCE).toNanos();
      held.add(new Held(unit, new ArrayDeque<>(), deadline));
    }
  }

  private void release(String identifier) {
    String unit =
        isLong
            ? "18DAF1" + identifier.substring(4, 6)
            : "%03X".formatted(Integer.parseInt(identifier, 16) + 8);
    for (Held rest : held) {
      if (rest.unit().equals(unit) && clock.nanoTime() <= rest.deadlineNanoTime()) {
        rest.frames().forEach(text -> say(text, ADAPTER_LATENCY));
        rest.frames().clear();
      }
    }
  }

  private void say(String text, Duration latency) {
    String arriving = wire.apply(text);
    if (!arriving.isEmpty()) {
      arrivals.add(new Arrival(clock.nanoTime() + latency.toNanos(), order++, arriving));
    }
  }

  private final class ScriptedLink implements Link {
    @Override
    public String address() {
      return ScriptedSerialCan.this.address();
    }

    @Override
    public void write(byte[] bytes) {
      take(new String(bytes, StandardCharsets.US_ASCII).replace("\r", ""));
    }

    @Override
    public byte[] read(Duration patience) throws LinkException {
      Arrival next = arrivals.peek();
      long end = clock.nanoTime() + patience.toNanos();
      if (next == null || next.nanoTime() > end) {
        clock.advance(patience);
        return new byte[0];
      }
      clock.advance(Duration.ofNanos(next.nanoTime() - clock.nanoTime()));
      arrivals.remove();
      return next.text().getBytes(StandardCharsets.ISO_8859_1);
    }

    @Override
    public void close() {}
  }
}
