package steadypull.drive;

import java.util.Locale;
import java.util.Objects;
import steadypull.advice.RuleBook;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.Vehicle;

/**
 * In which words and by which rules a drive advises. Immutable.
 *
 * @param rules the rules in force, by vehicle
 * @param locale language
 * @param units units
 */
public record DriveWords(RuleBook rules, Locale locale, UnitSystem units) {
  public DriveWords {
    Objects.requireNonNull(rules);
    Objects.requireNonNull(locale);
    Objects.requireNonNull(units);
  }

  /** Words with the same rules for every vehicle. */
  public DriveWords(RuleSet rules, Locale locale, UnitSystem units) {
    this(RuleBook.of(rules), locale, units);
  }

  /** The setup for a vehicle. */
  public DriveSetup setup(Vehicle vehicle, boolean demo) {
    return new DriveSetup(vehicle, rules.of(vehicle.name()), locale, units, demo);
  }
}
