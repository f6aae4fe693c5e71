package steadypull.tablet;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Battery and charger as the Linux kernel tells them: a folder for each, with files of one word
 * (Documentation/ABI/testing/sysfs-class-power of the kernel). Of several batteries the mean
 * counts.
 *
 * @param folder holds the folders
 */
record SysfsPower(Path folder) implements Tablet.PowerSupply {
  /** Kinds of supplies that are chargers; another word that begins with USB is one too. */
  private static final Set<String> CHARGERS = Set.of("Mains", "Wireless");

  private record Cell(int percent, String status) {}

  static SysfsPower here() {
    return new SysfsPower(Path.of("/sys/class/power_supply"));
  }

  @Override
  public Power read() {
    List<Path> supplies = new ArrayList<>();
    try (DirectoryStream<Path> found = Files.newDirectoryStream(folder)) {
      found.forEach(supplies::add);
      return of(supplies);
    } catch (IOException | DirectoryIteratorException | NumberFormatException untold) {
      // Also what is unplugged while it is read; the next look tells more.
      return new Power.CouldNotTell();
    }
  }

  private static Power of(List<Path> supplies) throws IOException {
    List<Cell> cells = new ArrayList<>();
    boolean onCharger = false;
    for (Path supply : supplies) {
      if (isOwnBattery(supply)) {
        cells.add(new Cell(percent(supply), word(supply, "status")));
      } else if (isCharger(supply)) {
        onCharger |= !word(supply, "online").equals("0");
      }
    }
    return cells.isEmpty() ? new Power.NoBattery() : battery(cells, onCharger);
  }

  private static Power battery(List<Cell> cells, boolean onCharger) {
    boolean isCharging =
        cells.stream().map(Cell::status).anyMatch(Set.of("Charging", "Full")::contains);
    boolean isDraining = cells.stream().map(Cell::status).anyMatch("Discharging"::equals);
    if (!onCharger && !isCharging && !isDraining) {
      return new Power.CouldNotTell();
    }
    double mean = cells.stream().mapToInt(Cell::percent).average().orElse(0);
    int percent = Math.clamp(Math.round(mean), 0, 100);
    return new Power.Battery(percent, onCharger || !isDraining, isDraining);
  }

  /** A stylus and a keyboard have batteries too: their scope is the device. */
  private static boolean isOwnBattery(Path supply) throws IOException {
    return word(supply, "type").equals("Battery")
        && !word(supply, "scope").equals("Device")
        && !word(supply, "present").equals("0");
  }

  private static boolean isCharger(Path supply) throws IOException {
    String type = word(supply, "type");
    return (CHARGERS.contains(type) || type.startsWith("USB"))
        && !word(supply, "scope").equals("Device");
  }

  /**
   * How full a battery is.
   *
   * @throws NumberFormatException if it does not tell
   */
  private static int percent(Path supply) throws IOException {
    return Integer.parseInt(word(supply, "capacity"));
  }

  /** The word of a file; empty if there is no such file. */
  private static String word(Path supply, String name) throws IOException {
    Path file = supply.resolve(name);
    return Files.exists(file) ? Files.readString(file).strip() : "";
  }
}
