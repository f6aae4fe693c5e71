package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the kernel tells, in hand-made folders. Files and words: Linux,
 * Documentation/ABI/testing/sysfs-class-power (type, scope, present, status, capacity, online).
 */
class SysfsPowerTest {
  @TempDir private Path folder;

  private Power read() {
    return new SysfsPower(folder).read();
  }

  private void supply(String name, String... fileAndWord) throws IOException {
    Path supply = Files.createDirectories(folder.resolve(name));
    for (int i = 0; i < fileAndWord.length; i += 2) {
      Files.writeString(supply.resolve(fileAndWord[i]), fileAndWord[i + 1] + "\n");
    }
  }

  private void battery(String name, int percent, String status) throws IOException {
    supply(name, "type", "Battery", "present", "1", "status", status, "capacity", "" + percent);
  }

  private void charger(String type, String online) throws IOException {
    supply("charger", "type", type, "online", online);
  }

  @ParameterizedTest
  @CsvSource({
    "Discharging, Mains, 0, false, true",
    "Charging, Mains, 1, true, false",
    "Full, Mains, 1, true, false",
    "Not charging, Mains, 1, true, false",
    "Discharging, Mains, 1, true, true",
    "Charging, USB, 1, true, false",
    "Discharging, USB_PD, 0, false, true",
    "Charging, Wireless, 1, true, false"
  })
  void batteryAndChargerAreToldApart(
      String status, String charger, String online, boolean onCharger, boolean draining)
      throws IOException {
    battery("BAT0", 63, status);
    charger(charger, online);

    assertThat(read()).isEqualTo(new Power.Battery(63, onCharger, draining));
  }

  @Test
  void aBatteryAloneTellsOfItsChargerByItsStatus() throws IOException {
    battery("battery", 40, "Charging");
    assertThat(read()).isEqualTo(new Power.Battery(40, true, false));
    battery("battery", 40, "Discharging");
    assertThat(read()).isEqualTo(new Power.Battery(40, false, true));
    battery("battery", 40, "Unknown");
    assertThat(read()).isEqualTo(new Power.CouldNotTell());
  }

  // The battery of a stylus says nothing of the tablet.
  @Test
  void batteriesOfDevicesAreNotTheTablets() throws IOException {
    battery("BAT0", 63, "Discharging");
    supply(
        "stylus", "type", "Battery", "scope", "Device", "status", "Discharging", "capacity", "4");
    assertThat(read()).isEqualTo(new Power.Battery(63, false, true));
  }

  @Test
  void aMachineWithDevicesOnlyHasNoBattery() throws IOException {
    assertThat(read()).isEqualTo(new Power.NoBattery());
    charger("Mains", "1");
    supply("mouse", "type", "Battery", "scope", "Device", "status", "Discharging", "capacity", "4");
    supply("BAT1", "type", "Battery", "present", "0");
    assertThat(read()).isEqualTo(new Power.NoBattery());
  }

  @Test
  void ofTwoBatteriesTheMeanCounts() throws IOException {
    battery("BAT0", 5, "Discharging");
    battery("BAT1", 95, "Unknown");
    assertThat(read()).isEqualTo(new Power.Battery(50, false, true));
  }

  @Test
  void whatCannotBeReadIsNotGuessed() throws IOException {
    assertThat(new SysfsPower(folder.resolve("absent")).read()).isEqualTo(new Power.CouldNotTell());
    supply("BAT0", "type", "Battery", "status", "Discharging", "capacity", "plenty");
    assertThat(read()).isEqualTo(new Power.CouldNotTell());
  }
}
