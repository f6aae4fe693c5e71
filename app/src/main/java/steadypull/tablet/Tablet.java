package steadypull.tablet;

import java.time.InstantSource;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The machine that records. Immutable; its parts are used by one thread at a time.
 *
 * @param awake keeps it from falling asleep
 * @param power tells of battery and charger
 * @param clocks tell what time it is
 */
public record Tablet(AwakeKeeper awake, PowerSupply power, Clocks clocks) {
  public Tablet {
    Objects.requireNonNull(awake);
    Objects.requireNonNull(power);
    Objects.requireNonNull(clocks);
  }

  /** Keeps a machine awake by what its system offers for that. */
  @FunctionalInterface
  public interface AwakeKeeper {
    /**
     * Begins to keep it awake, screen included. May take seconds. What is held ends with the
     * program, however that ends.
     *
     * @return what holds until it is closed, by the same thread
     */
    Awake begin();
  }

  /** Tells of battery and charger. */
  @FunctionalInterface
  public interface PowerSupply {
    /** Where both stand now. */
    Power read();
  }

  /** Tells what time it is. */
  @FunctionalInterface
  public interface Clocks {
    /** All clocks at one moment; empty if they could not be read together. */
    Optional<ClockReading> read();
  }

  /** A tablet that nobody watches: a replay's, or a machine of no interest. */
  public static Tablet unwatched() {
    return new Tablet(
        () -> new Awake.Held(() -> true, () -> {}), Power.CouldNotTell::new, Optional::empty);
  }

  /**
   * The machine that this program runs on.
   *
   * @param operatingSystem as in the system property {@code os.name}
   * @param environment environment variables; they name the desktop
   * @param wall the wall's clock
   */
  public static Tablet ofThisMachine(
      String operatingSystem, Map<String, String> environment, InstantSource wall) {
    String system = operatingSystem.toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      return new Tablet(
          WindowsAwake.here(), WindowsPower.here(), MachineClocks.withoutUptime(wall));
    }
    if (system.startsWith("mac")) {
      return new Tablet(ChildAwake.onMac(), MacPower.here(), MachineClocks.withoutUptime(wall));
    }
    return new Tablet(
        ChildAwake.onLinux(environment), SysfsPower.here(), MachineClocks.onLinux(wall));
  }
}
