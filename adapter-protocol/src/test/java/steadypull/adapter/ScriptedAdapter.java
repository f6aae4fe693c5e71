package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/**
 * An adapter in memory, in the time of a manual clock. Every reply takes 30 ms; what stands behind
 * a bar in a reply comes four seconds later.
 */
final class ScriptedAdapter implements LinkSource {
  private static final Duration LATENCY = Duration.ofMillis(30);
  private static final Duration LATER = Duration.ofSeconds(4);

  final ManualClock clock = new ManualClock();
  final ScriptedVehicle vehicle;
  final List<String> sent = new ArrayList<>();
  final List<Double> sentAtSeconds = new ArrayList<>();
  final Map<String, String> adapterReplies = new TreeMap<>();

  /** Turns a reply into what really arrives. */
  UnaryOperator<String> wire = reply -> reply;

  /** What the adapter says by itself next. */
  String unasked = "";

  boolean isMute;
  boolean isGone;
  int mostBytesPerRead = Integer.MAX_VALUE;
  int openings;
  private boolean echoes = true;

  ScriptedAdapter(ScriptedVehicle vehicle) {
    this.vehicle = vehicle;
  }

  @Override
  public String address() {
    return "scripted:port";
  }

  @Override
  public LinkClock clock() {
    return clock;
  }

  @Override
  public Link open() throws LinkException {
    openings++;
    if (isGone) {
      throw gone("open");
    }
    return new ScriptedLink();
  }

  private LinkException gone(String attempt) {
    return new LinkException(
        address(), attempt, "the device has gone", "Check the plug.", /* cause= */ null);
  }

  private String reply(String command) {
    String echo = echoes ? command + "\r" : "";
    if (!command.startsWith("AT")) {
      return echo + vehicle.answer(command) + "\r>";
    }
    return echo + adapterReply(command) + "\r\r>";
  }

  private String adapterReply(String command) {
    String prepared = adapterReplies.get(command);
    if (prepared != null) {
      return prepared;
    }
    note(command);
    return switch (command) {
      case "ATZ", "ATWS" -> "\r\rSCRIPTED ADAPTER 1";
      case "ATI" -> "SCRIPTED ADAPTER 1";
      case "ATDPN" -> "A6";
      case "ATDP" -> "AUTO, ISO 15765-4 (CAN 11/500)";
      case "ATRV" -> "13.8V";
      default -> "OK";
    };
  }

  private void note(String command) {
    if (command.equals("ATZ") || command.equals("ATWS")) {
      echoes = true;
      vehicle.header = "7DF";
    } else if (command.equals("ATE0")) {
      echoes = false;
    } else if (command.startsWith("ATSH")) {
      vehicle.header = command.substring(4);
    }
  }

  private final class ScriptedLink implements Link {
    private byte[] pending = {};
    private long arrivesNanoTime;

    @Override
    public String address() {
      return ScriptedAdapter.this.address();
    }

    @Override
    public void write(byte[] bytes) throws LinkException {
      if (isGone) {
        throw gone("send to");
      }
      String command = new String(bytes, StandardCharsets.US_ASCII).replace("\r", "");
      sent.add(command);
      sentAtSeconds.add(clock.seconds());
      String reply = isMute ? "" : wire.apply(command.isEmpty() ? "?\r\r>" : reply(command));
      pending = reply.getBytes(StandardCharsets.ISO_8859_1);
      arrivesNanoTime = clock.nanoTime() + LATENCY.toNanos();
    }

    @Override
    public byte[] read(Duration patience) throws LinkException {
      if (isGone) {
        throw gone("read from");
      }
      if (patience.isZero() && !unasked.isEmpty()) {
        byte[] said = unasked.getBytes(StandardCharsets.ISO_8859_1);
        unasked = "";
        return said;
      }
      long wait = Math.max(0, arrivesNanoTime - clock.nanoTime());
      if (pending.length == 0 || wait > patience.toNanos()) {
        clock.advance(patience);
        return new byte[0];
      }
      clock.advance(Duration.ofNanos(wait));
      if (pending[0] == '|') {
        pending = Arrays.copyOfRange(pending, 1, pending.length);
        arrivesNanoTime += LATER.toNanos();
        return new byte[0];
      }
      int bar = new String(pending, StandardCharsets.ISO_8859_1).indexOf('|');
      int count = Math.min(mostBytesPerRead, bar < 0 ? pending.length : bar);
      byte[] came = Arrays.copyOf(pending, count);
      pending = Arrays.copyOfRange(pending, count, pending.length);
      return came;
    }

    @Override
    public void close() {}
  }
}
