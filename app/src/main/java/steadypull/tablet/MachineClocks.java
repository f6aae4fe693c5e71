package steadypull.tablet;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongSupplier;

/**
 * The clocks of this machine. A reading during which the machine was busy elsewhere would make
 * clocks part that did not: such a one is left out.
 *
 * @param wall the wall's clock
 * @param monotonic nanoseconds of the monotonic clock
 * @param uptime file that tells the seconds since the start, sleep included, as its first word
 */
record MachineClocks(InstantSource wall, LongSupplier monotonic, Optional<Path> uptime)
    implements Tablet.Clocks {
  private static final Duration AT_ONCE = Duration.ofMillis(200);

  /** "Uptime of the system, including time spent in suspend": proc(5), Linux man-pages. */
  private static final Path UPTIME = Path.of("/proc/uptime");

  static MachineClocks onLinux(InstantSource wall) {
    return new MachineClocks(wall, System::nanoTime, Optional.of(UPTIME));
  }

  static MachineClocks withoutUptime(InstantSource wall) {
    return new MachineClocks(wall, System::nanoTime, Optional.empty());
  }

  @Override
  public Optional<ClockReading> read() {
    long begun = monotonic.getAsLong();
    Instant now = wall.instant();
    OptionalLong up = uptimeNanos();
    Duration took = Duration.ofNanos(monotonic.getAsLong() - begun);
    return took.compareTo(AT_ONCE) > 0
        ? Optional.empty()
        : Optional.of(new ClockReading(now, begun, up));
  }

  private OptionalLong uptimeNanos() {
    if (uptime.isEmpty()) {
      return OptionalLong.empty();
    }
    try {
      String seconds = Files.readString(uptime.get()).strip().split(" ", 2)[0];
      return OptionalLong.of(new BigDecimal(seconds).movePointRight(9).longValue());
    } catch (IOException | NumberFormatException untold) {
      // Safe to go on: a sleep is then told as a clock that was set.
      return OptionalLong.empty();
    }
  }
}
