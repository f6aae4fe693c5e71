package steadypull.demo.bench;

import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;

/**
 * An AT-command adapter: characters in, characters out, each at its moment on the bench's clock. No
 * I/O and no clock of its own. Used by one thread at a time.
 */
final class BenchAdapter {
  private static final int LONGEST_LINE = 254;
  private static final long COMMAND_NANOS = 1_000_000;
  private static final long RESET_NANOS = 800_000_000;
  private static final long WARM_START_NANOS = 120_000_000;
  private static final double NANOS = 1e9;
  private static final String PROMPT = ">";

  private final BenchSettings settings;
  private final AtCommands commands;
  private final BusRequests requests;
  private final Outlet outlet;
  private final Random nonsense;
  private final StringBuilder line = new StringBuilder();
  private String lastLine = "";
  private long isBusyUntil;
  private boolean isResetting;

  BenchAdapter(BenchSettings settings, long characterNanos) {
    this.settings = settings;
    VehicleBus bus = new VehicleBus(new BenchVehicle(settings), settings);
    outlet = new Outlet(characterNanos);
    commands = new AtCommands(bus, settings.has(Fault.Kind.ECHO, 0));
    requests = new BusRequests(bus, outlet);
    nonsense = new Random(settings.seed() ^ 0xBADL);
  }

  /** Takes one character that has arrived at a moment. */
  void hear(byte character, long nanos) {
    if (settings.has(Fault.Kind.SILENT, nanos / NANOS) || character == 0) {
      return;
    }
    if (settings.has(Fault.Kind.NONSENSE, nanos / NANOS)) {
      babble(nanos);
    } else if (nanos < isBusyUntil) {
      stop(nanos);
    } else if (character == '\r') {
      execute(nanos);
    } else if (character != '\n') {
      collect((char) (character & 0xFF), nanos);
    }
  }

  /** Takes what has been sent by a moment. */
  byte[] take(long nanos) {
    return outlet.take(nanos);
  }

  /** When the next character will have been sent, if one is on its way. */
  OptionalLong nextNanos() {
    return outlet.nextNanos();
  }

  private void babble(long nanos) {
    line.setLength(0);
    StringBuilder text = new StringBuilder();
    for (int i = nonsense.nextInt(12); i >= 0; i--) {
      text.append((char) nonsense.nextInt(256));
    }
    outlet.print(text.toString(), nanos);
  }

  /** A byte while busy ends the running request; a reset hears nothing. */
  private void stop(long nanos) {
    if (isResetting) {
      return;
    }
    outlet.cut(nanos);
    outlet.print("STOPPED" + end() + end() + PROMPT, nanos + COMMAND_NANOS);
    isBusyUntil = outlet.isFreeAt();
  }

  private void collect(char character, long nanos) {
    if (mode().echo) {
      outlet.print(String.valueOf(character), nanos);
    }
    if (line.length() < LONGEST_LINE) {
      line.append(character);
    }
  }

  private void execute(long nanos) {
    String written = line.toString().replaceAll("\\s", "").toUpperCase(Locale.ROOT);
    line.setLength(0);
    if (mode().echo) {
      outlet.print(end(), nanos);
    }
    lastLine = written.isEmpty() ? lastLine : written;
    isResetting = false;
    perform(lastLine, nanos + COMMAND_NANOS);
    isBusyUntil = outlet.isFreeAt();
  }

  private void perform(String command, long nanos) {
    switch (command) {
      case "" -> outlet.print(end() + PROMPT, nanos);
      case "ATZ" -> restart(nanos + RESET_NANOS);
      case "ATWS" -> restart(nanos + WARM_START_NANOS);
      default -> {
        if (command.startsWith("AT")) {
          String answer = commands.answer(command.substring(2), nanos);
          outlet.print(answer + end() + end() + PROMPT, nanos);
        } else {
          requests.perform(command, mode(), nanos);
          outlet.print(end() + PROMPT, outlet.isFreeAt());
        }
      }
    }
  }

  private void restart(long readyNanos) {
    isResetting = true;
    commands.reset();
    outlet.print(end() + end() + AtCommands.IDENTITY + end() + end() + PROMPT, readyNanos);
  }

  private AdapterMode mode() {
    return commands.mode();
  }

  private String end() {
    return mode().linefeeds ? "\r\n" : "\r";
  }
}
