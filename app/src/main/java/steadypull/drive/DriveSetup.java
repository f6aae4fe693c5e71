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
 */
public record DriveSetup(
    Vehicle vehicle, RuleSet rules, Locale locale, UnitSystem units, boolean demo) {
  public DriveSetup {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(rules);
    Objects.requireNonNull(locale);
    Objects.requireNonNull(units);
  }

  /** The same with another vehicle. */
  DriveSetup with(Vehicle other) {
    return new DriveSetup(other, rules, locale, units, demo);
  }
}
