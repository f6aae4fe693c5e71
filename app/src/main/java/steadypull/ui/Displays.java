package steadypull.ui;

import java.util.Locale;
import java.util.Map;

/** Whether there is a display to open a window on. Any thread. */
public final class Displays {
  private Displays() {}

  /**
   * Whether this process has a display. On Linux that is an X11 display, which a Wayland session
   * offers too.
   */
  public static boolean available() {
    return available(System.getProperty("os.name", ""), System.getenv());
  }

  static boolean available(String system, Map<String, String> environment) {
    boolean hasOwn =
        system.toLowerCase(Locale.ROOT).startsWith("windows")
            || system.toLowerCase(Locale.ROOT).startsWith("mac");
    return hasOwn || !environment.getOrDefault("DISPLAY", "").isBlank();
  }
}
