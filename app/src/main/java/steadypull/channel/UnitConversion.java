package steadypull.channel;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns a value of a foreign unit into the unit of a channel: {@code (value - shift) * multiplier /
 * divisor}. Immutable. A unit whose meaning is open (gallons, gauge pressure) has no conversion: it
 * is asked for, not guessed.
 *
 * <p>Exact definitions: International Yard and Pound Agreement, 1959 (foot, mile, pound); 3rd CGPM,
 * 1901 (standard gravity); BIPM, SI Brochure, 9th edition, 2019, 2.3.1 and table 8 (kelvin, bar,
 * hour). Clauses from memory.
 *
 * @param from the foreign unit as written
 * @param to the unit of the channel
 * @param shift subtracted first; differs from 0 for temperatures only
 * @param multiplier not zero
 * @param divisor not zero; apart from the multiplier, so that 5/9 stays exact
 */
public record UnitConversion(
    String from, String to, double shift, double multiplier, double divisor) {
  private static final double FOOT_METRES = 0.3048;
  private static final double INCH_METRES = 0.0254;
  private static final double MILE_KILOMETRES = 1.609344;
  private static final double NAUTICAL_MILE_KILOMETRES = 1.852;
  private static final double POUND_KILOGRAMS = 0.45359237;
  private static final double STANDARD_GRAVITY = 9.80665;
  private static final double POUND_FORCE_NEWTONS = POUND_KILOGRAMS * STANDARD_GRAVITY;

  /** Conventional density of mercury at 0 degC, kg/m3 (BS 350, conventional inch of mercury). */
  private static final double MERCURY_DENSITY = 13_595.1;

  private static final Map<String, Map<String, UnitConversion>> BY_TARGET = new LinkedHashMap<>();

  static {
    same("degC", "°C", "C", "Cel");
    add("degC", 32, 5, 9, "degF", "°F", "F");
    add("degC", 273.15, 1, 1, "K");
    scale("kPa", 0.001, "Pa");
    scale("kPa", 0.1, "hPa", "mbar");
    scale("kPa", 100, "bar");
    scale("kPa", 1000, "MPa");
    scale("kPa", POUND_FORCE_NEWTONS / (INCH_METRES * INCH_METRES) / 1000, "psi", "psia");
    scale("kPa", MERCURY_DENSITY * STANDARD_GRAVITY * INCH_METRES / 1000, "inHg");
    same("km/h", "kmh", "kph");
    scale("km/h", MILE_KILOMETRES, "mph", "mi/h");
    scale("km/h", 3.6, "m/s");
    scale("km/h", NAUTICAL_MILE_KILOMETRES, "kn");
    same("r/min", "rpm", "RPM", "1/min", "/min", "min-1");
    scale("m", FOOT_METRES, "ft");
    scale("m", 1000, "km");
    scale("m", MILE_KILOMETRES * 1000, "mi");
    scale("g/s", 1000, "kg/s");
    add("g/s", 0, 1, 3.6, "kg/h");
    add("g/s", 0, POUND_KILOGRAMS * 1000, 60, "lb/min");
    same("L/h", "l/h");
    scale("L/h", 60, "L/min", "l/min");
    same("N.m", "Nm", "N·m", "N m");
    scale("N.m", POUND_FORCE_NEWTONS * FOOT_METRES, "lbf.ft", "ft.lbf", "lbf ft", "lb.ft");
    scale("kW", 0.001, "W");
    // Mechanical horsepower, 550 ft.lbf/s; metric horsepower, 75 m.kgf/s.
    scale("kW", 550 * FOOT_METRES * POUND_FORCE_NEWTONS / 1000, "hp");
    scale("kW", 75 * STANDARD_GRAVITY / 1000, "PS");
    scale("V", 0.001, "mV");
    same("deg", "°");
    same("%", "percent");
    same("1");
  }

  /** The converted value. */
  public double apply(double value) {
    return (value - shift) * multiplier / divisor;
  }

  /** True if the value stays as it is, only the spelling of the unit may differ. */
  public boolean isIdentity() {
    return shift == 0 && multiplier == divisor;
  }

  /** The conversion between two units, or empty if there is none. */
  public static Optional<UnitConversion> between(String from, String to) {
    if (from.equals(to)) {
      return Optional.of(new UnitConversion(from, to, 0, 1, 1));
    }
    return Optional.ofNullable(BY_TARGET.getOrDefault(to, Map.of()).get(from));
  }

  /** The units accepted for a channel of that unit, its own first. */
  public static List<String> unitsFor(String to) {
    Map<String, UnitConversion> known = BY_TARGET.get(to);
    return known == null ? List.of(to) : List.copyOf(known.keySet());
  }

  private static void same(String to, String... spellings) {
    add(to, 0, 1, 1, spellings);
  }

  private static void scale(String to, double factor, String... spellings) {
    add(to, 0, factor, 1, spellings);
  }

  private static void add(String to, double shift, double by, double over, String... spellings) {
    Map<String, UnitConversion> known =
        BY_TARGET.computeIfAbsent(
            to, unit -> new LinkedHashMap<>(Map.of(unit, new UnitConversion(unit, unit, 0, 1, 1))));
    for (String spelling : spellings) {
      known.put(spelling, new UnitConversion(spelling, to, shift, by, over));
    }
  }
}
