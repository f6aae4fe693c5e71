package steadypull.tablet;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * Battery and charger as Windows tells them (SYSTEM_POWER_STATUS, Microsoft's reference, from
 * memory): byte 0 ACLineStatus, 0 or 1; byte 1 BatteryFlag, bits; byte 2 BatteryLifePercent; 255
 * each if unknown.
 *
 * @param status gives the bytes, if they can be had
 */
record WindowsPower(Supplier<Optional<byte[]>> status) implements Tablet.PowerSupply {
  private static final int UNKNOWN = 255;
  private static final int NO_BATTERY = 128;
  private static final int CHARGING = 8;

  static WindowsPower here() {
    Optional<Kernel32> library = Kernel32.find();
    return new WindowsPower(() -> library.flatMap(Kernel32::systemPowerStatus));
  }

  @Override
  public Power read() {
    return status.get().map(WindowsPower::of).orElseGet(Power.CouldNotTell::new);
  }

  private static Power of(byte[] status) {
    int line = Byte.toUnsignedInt(status[0]);
    int flags = Byte.toUnsignedInt(status[1]);
    int percent = Byte.toUnsignedInt(status[2]);
    if (flags != UNKNOWN && (flags & NO_BATTERY) != 0) {
      return new Power.NoBattery();
    }
    if (line > 1 || flags == UNKNOWN || percent > 100) {
      return new Power.CouldNotTell();
    }
    return new Power.Battery(percent, line == 1, line == 0 && (flags & CHARGING) == 0);
  }
}
