package steadypull.demo.bench;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/** An AT-command adapter. */
final class AtAdapter implements BenchAdapter {
  private static final int LONGEST_LINE = 254;
  private static final long COMMAND_NANOS = 1_000_000;
  private static final long SLOW_COMMAND_NANOS = 41_000_000;
  private static final long RESET_NANOS = 800_000_000;
  private static final long WARM_START_NANOS = 120_000_000;
  private static final double NANOS = 1e9;
  private static final String PROMPT = ">";

  private final BenchSettings settings;
  private final VehicleBus bus;
  private final AtCommands commands;
  private final BusRequests requests;
  private final Outlet outlet;
  private final UnaskedEvents events;
  private final Drowsiness drowsiness;
  private final long commandNanos;
  private final StringBuilder line = new StringBuilder();
  private String lastLine = "";
  private long isBusyUntil;
  private boolean isResetting;
  private boolean wasRunning;

  AtAdapter(BenchSettings settings) {
    this.settings = settings;
    AdapterTraits traits = settings.adapter();
    bus = new VehicleBus(settings);
    outlet = new Outlet(traits.characterNanos());
    boolean isEchoStuck = traits.has(AdapterTrait.ECHO) || settings.has(Fault.Kind.ECHO, 0);
    commands = new AtCommands(bus, traits, isEchoStuck);
    requests = new BusRequests(bus, settings, outlet);
    events = new UnaskedEvents(settings.faults());
    drowsiness = new Drowsiness(traits.has(AdapterTrait.SLEEPY));
    commandNanos = traits.has(AdapterTrait.SLOW) ? SLOW_COMMAND_NANOS : COMMAND_NANOS;
  }

  @Override
  public void hear(byte character, long nanos) {
    live(nanos);
    if (drowsiness.isAsleep()) {
      wake(nanos);
      return;
    }
    drowsiness.heard(nanos);
    if (character != 0 && nanos < isBusyUntil) {
      stop(nanos);
    } else if (character == '\r') {
      execute(nanos);
    } else if (character != 0 && character != '\n') {
      collect((char) (character & 0xFF), nanos);
    }
  }

  @Override
  public byte[] take(long nanos) {
    live(nanos);
    return outlet.take(nanos);
  }

  @Override
  public OptionalLong nextNanos() {
    OptionalLong byItself = Moments.earlier(events.nextNanos(), drowsiness.nextNanos());
    return Moments.earlier(outlet.nextNanos(), byItself);
  }

  /** Lets happen what happens by itself up to a moment. */
  private void live(long nanos) {
    for (Optional<Fault> due = events.take(nanos); due.isPresent(); due = events.take(nanos)) {
      suffer(due.get(), (long) (due.get().fromSeconds() * NANOS));
    }
    Optional<Drowsiness.Stage> stage = drowsiness.take(nanos);
    while (stage.isPresent()) {
      warn(stage.get().text(), nanos);
      stage = drowsiness.take(nanos);
    }
    boolean isRunning = bus.isRunning(nanos);
    if (isRunning && !wasRunning && drowsiness.isAsleep()) {
      wake(nanos);
    }
    wasRunning = isRunning;
  }

  /** A byte or the rising supply wakes; the settings are lost. */
  private void wake(long nanos) {
    drowsiness.heard(nanos);
    restart(AtCommands.IDENTITY, nanos + WARM_START_NANOS);
  }

  private void suffer(Fault fault, long nanos) {
    switch (fault.kind()) {
      case VANISH -> {
        outlet.cut(nanos);
        line.setLength(0);
        commands.reset();
        isBusyUntil = nanos;
      }
      case LV_RESET -> restartAtOnce("LV RESET", nanos);
      case REBOOT -> restartAtOnce(AtCommands.IDENTITY, nanos);
      case ACT_ALERT -> warn(Drowsiness.Stage.MINUTE_BEFORE.text(), nanos);
      case LP_ALERT -> warn(Drowsiness.Stage.SECONDS_BEFORE.text(), nanos);
      default -> throw new IllegalStateException("Nothing happens unasked on " + fault);
    }
  }

  private void restartAtOnce(String text, long nanos) {
    outlet.cut(nanos);
    restart(text, nanos + WARM_START_NANOS);
  }

  private void warn(String text, long nanos) {
    if (!text.isEmpty()) {
      outlet.interject(end() + text + end(), nanos);
      isBusyUntil = nanos < isBusyUntil ? outlet.isFreeAt() : isBusyUntil;
    }
  }

  /** A byte while busy ends the running request; a reset hears nothing. */
  private void stop(long nanos) {
    if (isResetting) {
      return;
    }
    outlet.cut(nanos);
    outlet.print("STOPPED" + end() + end() + PROMPT, nanos + commandNanos);
    isBusyUntil = outlet.isFreeAt();
  }

  private void collect(char character, long nanos) {
    if (isEchoing(nanos)) {
      outlet.print(String.valueOf(character), nanos);
    }
    if (line.length() < LONGEST_LINE) {
      line.append(character);
    }
  }

  private boolean isEchoing(long nanos) {
    return mode().echo || settings.has(Fault.Kind.ECHO, nanos / NANOS);
  }

  private void execute(long nanos) {
    String written = line.toString().replaceAll("\\s", "").toUpperCase(Locale.ROOT);
    line.setLength(0);
    if (isEchoing(nanos)) {
      outlet.print(end(), nanos);
    }
    lastLine = written.isEmpty() ? lastLine : written;
    isResetting = false;
    perform(lastLine, nanos + commandNanos);
    isBusyUntil = outlet.isFreeAt();
  }

  private void perform(String command, long nanos) {
    boolean isOwn = command.startsWith("AT");
    if (command.isEmpty()) {
      outlet.print(end() + PROMPT, nanos);
    } else if (command.equals("ATZ")) {
      restart(AtCommands.IDENTITY, nanos + RESET_NANOS);
    } else if (command.equals("ATWS") && !settings.adapter().refuses("WS")) {
      restart(AtCommands.IDENTITY, nanos + WARM_START_NANOS);
    } else if (isOwn) {
      String answer = commands.answer(command.substring(2), nanos);
      outlet.print(answer + end() + end() + PROMPT, nanos);
    } else if (settings.has(Fault.Kind.ERR94, nanos / NANOS)) {
      commands.reset();
      outlet.print("ERR94" + end() + end() + PROMPT, nanos);
    } else {
      requests.perform(command, mode(), nanos);
      outlet.print(end() + PROMPT, outlet.isFreeAt());
    }
  }

  /** Settings are lost; a text tells when the adapter is ready again. */
  private void restart(String text, long readyNanos) {
    isResetting = true;
    line.setLength(0);
    commands.reset();
    outlet.print(end() + end() + text + end() + end() + PROMPT, readyNanos);
    isBusyUntil = outlet.isFreeAt();
  }

  private AdapterMode mode() {
    return commands.mode();
  }

  private String end() {
    return mode().linefeeds ? "\r\n" : "\r";
  }
}
