package steadypull.drive;

import java.util.Locale;
import java.util.Objects;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.Vehicle;

/**
 * What a drive starts from. Immutable.
 *
 * @param vehicle the vehicle with its limits
 * @param rules the rules in force
 * @param locale language of the advice
 * @param units units of the advice
 * @param demo whether the vehicle is simulated
 * @param coolerFallPercent by how much less heat one of its coolers moves than months ago, where
 *     that is sure; else 0
 */
public record DriveSetup(
    Vehicle vehicle,
    RuleSet rules,
    Locale locale,
    UnitSystem units,
    boolean demo,
    double coolerFallPercent) {
  public DriveSetup {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(rules);
    Objects.requireNonNull(locale);
    Objects.requireNonNull(units);
  }

  /** A drive of a vehicle of whose coolers no trips have told a fall. */
  public DriveSetup(Vehicle vehicle, RuleSet rules, Locale locale, UnitSystem units, boolean demo) {
    this(vehicle, rules, locale, units, demo, 0);
  }

  /** The same with another vehicle. */
  DriveSetup with(Vehicle other) {
    return new DriveSetup(other, rules, locale, units, demo, coolerFallPercent);
  }

  /** The same, knowing what the trips before have told of the coolers. */
  DriveSetup withCoolerFall(double percent) {
    return new DriveSetup(vehicle, rules, locale, units, demo, percent);
  }
}
