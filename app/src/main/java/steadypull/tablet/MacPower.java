package steadypull.tablet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Battery and charger as macOS tells them to {@code pmset -g batt} (from memory of its manual page
 * and its answers; not tried on such a machine).
 *
 * @param command tells them
 */
record MacPower(List<String> command) implements Tablet.PowerSupply {
  private static final Pattern BATTERY =
      Pattern.compile("InternalBattery.*?(\\d{1,3})%; ([a-z ]+)");

  MacPower {
    command = List.copyOf(command);
  }

  static MacPower here() {
    return new MacPower(List.of("/usr/bin/pmset", "-g", "batt"));
  }

  @Override
  public Power read() {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      process.getOutputStream().close();
      return of(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException untold) {
      return new Power.CouldNotTell();
    }
  }

  static Power of(String answer) {
    if (!answer.startsWith("Now drawing from")) {
      return new Power.CouldNotTell();
    }
    Matcher battery = BATTERY.matcher(answer);
    if (!battery.find()) {
      return new Power.NoBattery();
    }
    int percent = Math.min(100, Integer.parseInt(battery.group(1)));
    return new Power.Battery(
        percent, answer.contains("'AC Power'"), battery.group(2).strip().equals("discharging"));
  }
}
