package steadypull.channel;

import java.util.Locale;
import java.util.Objects;

/**
 * Turns quantities into text for people: the one place where a unit system and a locale meet a
 * number. Immutable.
 *
 * <p>Imperial factors: 1 mi = 1.609344 km and 1 ft = 0.3048 m exactly (international yard and pound
 * agreement, 1959); 1 hp = 0.745700 kW (mechanical horsepower, 550 ft.lbf/s); F = C * 1.8 + 32; 1
 * lb = 0.45359237 kg.
 */
public final class QuantityFormat {
  private static final double KILOMETRES_PER_MILE = 1.609344;
  private static final double METRES_PER_FOOT = 0.3048;
  private static final double KILOWATTS_PER_HORSEPOWER = 0.745700;
  private static final double KILOGRAMS_PER_POUND = 0.45359237;
  private static final double FAHRENHEIT_PER_KELVIN = 1.8;

  /** The mathematical minus sign, as wide as a plus; a hyphen is hard to see at a glance. */
  private static final char MINUS = '\u2212';

  private final Locale locale;
  private final UnitSystem system;

  /** A format for one reader. */
  public QuantityFormat(Locale locale, UnitSystem system) {
    this.locale = Objects.requireNonNull(locale);
    this.system = Objects.requireNonNull(system);
  }

  /** The unit system in use. */
  public UnitSystem system() {
    return system;
  }

  /** A temperature in whole degrees without a unit letter: {@code 96°}. */
  public String temperature(double celsius) {
    return degrees(shownTemperature(celsius)) + "°";
  }

  /** The whole number shown for a temperature, for layouts that draw the degree sign apart. */
  public String temperatureDigits(double celsius) {
    return degrees(shownTemperature(celsius));
  }

  /** An outside temperature with its unit letter: {@code 38 °C}. */
  public String outsideTemperature(double celsius) {
    return degrees(shownTemperature(celsius)) + " " + outsideTemperatureUnit();
  }

  /** {@code °C} or {@code °F}. */
  public String outsideTemperatureUnit() {
    return system == UnitSystem.METRIC ? "°C" : "°F";
  }

  /** A difference of temperatures in whole degrees, never negative zero: {@code 24°}. */
  public String temperatureDifference(double kelvin) {
    return degrees(system == UnitSystem.METRIC ? kelvin : kelvin * FAHRENHEIT_PER_KELVIN) + "°";
  }

  /** A difference of temperatures with one decimal and no sign: {@code 2.3°}. */
  public String fineDifference(double kelvin) {
    return decimal(
            Math.abs(system == UnitSystem.METRIC ? kelvin : kelvin * FAHRENHEIT_PER_KELVIN), 1)
        + "°";
  }

  /** A temperature with one decimal and no unit letter: {@code 96.4°}. */
  public String fineTemperature(double celsius) {
    return decimal(shownTemperature(celsius), 1) + "°";
  }

  /** A number with so many decimals, never negative zero. */
  public String decimal(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return String.format(locale, "%." + decimals + "f", Math.round(value * scale) / scale)
        .replace('-', MINUS);
  }

  /** A power in whole units: {@code 118 kW}. */
  public String power(double kilowatts) {
    return powerDigits(kilowatts) + " " + powerUnit();
  }

  /** A speed in whole units: {@code 75 km/h}. */
  public String speed(double kilometresPerHour) {
    return speedDigits(kilometresPerHour) + " " + speedUnit();
  }

  /** The whole number shown for a speed. */
  public String speedDigits(double kilometresPerHour) {
    return whole(
        system == UnitSystem.METRIC ? kilometresPerHour : kilometresPerHour / KILOMETRES_PER_MILE);
  }

  /** {@code km/h} or {@code mph}. */
  public String speedUnit() {
    return system == UnitSystem.METRIC ? "km/h" : "mph";
  }

  /** The whole number shown for a power. */
  public String powerDigits(double kilowatts) {
    return whole(system == UnitSystem.METRIC ? kilowatts : kilowatts / KILOWATTS_PER_HORSEPOWER);
  }

  /** {@code kW} or {@code hp}. */
  public String powerUnit() {
    return system == UnitSystem.METRIC ? "kW" : "hp";
  }

  /** A mass: {@code 7.8 t}, or whole hundreds of pounds: {@code 17,200 lb}. */
  public String mass(double kilograms) {
    if (system == UnitSystem.METRIC) {
      return String.format(locale, "%.1f t", kilograms / 1000);
    }
    return String.format(locale, "%,d lb", Math.round(kilograms / KILOGRAMS_PER_POUND / 100) * 100);
  }

  /** {@code kg} or {@code lb}: the unit in which a mass is typed. */
  public String massUnit() {
    return system == UnitSystem.METRIC ? "kg" : "lb";
  }

  /** A mass as somebody would type it, in whole {@link #massUnit}s without the unit. */
  public String typedMass(double kilograms) {
    return whole(system == UnitSystem.METRIC ? kilograms : kilograms / KILOGRAMS_PER_POUND);
  }

  /** The kg of a mass that was typed in {@link #massUnit}s. */
  public double kilograms(double typed) {
    return system == UnitSystem.METRIC ? typed : typed * KILOGRAMS_PER_POUND;
  }

  /** An outside temperature as somebody would type it: with one decimal, no unit. */
  public String typedTemperature(double celsius) {
    return String.format(locale, "%.1f", shownTemperature(celsius));
  }

  /** The degC of a temperature that was typed in {@link #outsideTemperatureUnit}s. */
  public double celsius(double typed) {
    return system == UnitSystem.METRIC ? typed : (typed - 32) / FAHRENHEIT_PER_KELVIN;
  }

  /** A difference of masses: whole tens of kg, {@code 620 kg}, or of pounds, {@code 1,370 lb}. */
  public String massDifference(double kilograms) {
    return system == UnitSystem.METRIC
        ? String.format(locale, "%,d kg", Math.round(kilograms / 10) * 10)
        : String.format(locale, "%,d lb", Math.round(kilograms / KILOGRAMS_PER_POUND / 10) * 10);
  }

  /** A distance with one decimal: {@code 24.6 km} or {@code 15.3 mi}. */
  public String distance(double metres) {
    double kilometres = metres / 1000;
    return system == UnitSystem.METRIC
        ? String.format(locale, "%.1f km", kilometres)
        : String.format(locale, "%.1f mi", kilometres / KILOMETRES_PER_MILE);
  }

  /** A rise in whole units: {@code 690 m} or {@code 2,264 ft}. */
  public String rise(double metres) {
    return system == UnitSystem.METRIC
        ? String.format(locale, "%,d m", Math.round(metres))
        : String.format(locale, "%,d ft", Math.round(metres / METRES_PER_FOOT));
  }

  /** A grade with one decimal and no unit: {@code 5.0}. */
  public String gradeDigits(double percent) {
    // Rounded first: a road that is level to one decimal has no sign, in whatever digits it prints.
    String text = String.format(locale, "%.1f", Math.round(percent * 10) / 10.0);
    return text.replace('-', MINUS);
  }

  /** A whole number. */
  public String whole(double value) {
    long rounded = Math.round(value);
    return String.format(locale, "%d", rounded).replace('-', MINUS);
  }

  /** A time to come as {@code m:ss}, never below 0:05. */
  public String countdown(double seconds) {
    long whole = Math.max(5, Math.round(seconds));
    return String.format(locale, "%d:%02d", whole / 60, whole % 60);
  }

  /** A span that has passed as {@code h:mm:ss}. */
  public String elapsed(long seconds) {
    return String.format(locale, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }

  private double shownTemperature(double celsius) {
    return system == UnitSystem.METRIC ? celsius : celsius * FAHRENHEIT_PER_KELVIN + 32;
  }

  private String degrees(double value) {
    return whole(value);
  }
}
