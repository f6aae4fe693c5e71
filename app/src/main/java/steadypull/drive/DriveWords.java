package steadypull.drive;

import java.util.Locale;
import java.util.Objects;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.Vehicle;

/**
 * In which words and by which rules a drive advises. Immutable.
 *
 * @param rules the rules in force
 * @param locale language
 * @param units units
 */
public record DriveWords(RuleSet rules, Locale locale, UnitSystem units) {
  public DriveWords {
    Objects.requireNonNull(rules);
    Objects.requireNonNull(locale);
    Objects.requireNonNull(units);
  }

  /** The setup for a vehicle. */
  public DriveSetup setup(Vehicle vehicle, boolean demo) {
    return new DriveSetup(vehicle, rules, locale, units, demo);
  }
}
