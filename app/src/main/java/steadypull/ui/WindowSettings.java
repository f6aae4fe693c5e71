package steadypull.ui;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import steadypull.channel.UnitSystem;

/**
 * How the window begins.
 *
 * @param port address to drive at once, if one; else the start screen asks
 * @param vehicle name of the vehicle for that drive; the last used one if empty
 * @param locale language of the texts
 * @param units units of the quantities, until the menu changes them
 * @param screen what the screen remembers
 */
public record WindowSettings(
    Optional<String> port,
    Optional<String> vehicle,
    Locale locale,
    UnitSystem units,
    ScreenSettings screen) {
  public WindowSettings {
    Objects.requireNonNull(port);
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(locale);
    Objects.requireNonNull(units);
    Objects.requireNonNull(screen);
  }

  /** The start screen in the language and units of this machine. */
  public static WindowSettings usual() {
    return new WindowSettings(
        Optional.empty(),
        Optional.empty(),
        Locale.getDefault(),
        UnitSystem.METRIC,
        ScreenSettings.unkept());
  }
}
