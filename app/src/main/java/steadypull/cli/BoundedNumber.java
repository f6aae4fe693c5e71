package steadypull.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number within bounds. */
abstract class BoundedNumber implements ITypeConverter<Double> {
  private final String unit;
  private final double lowest;
  private final double highest;
  private final String example;

  BoundedNumber(String unit, double lowest, double highest, String example) {
    this.unit = unit;
    this.lowest = lowest;
    this.highest = highest;
    this.example = example;
  }

  @Override
  public Double convert(String text) {
    try {
      double value = Double.parseDouble(text);
      if (value >= lowest && value <= highest) {
        return value;
      }
      throw refused(text);
    } catch (NumberFormatException noNumber) {
      throw refused(text);
    }
  }

  private TypeConversionException refused(String text) {
    return new TypeConversionException(
        String.format(
            Locale.ROOT,
            "expected %s from %.0f to %.0f such as %s, found \"%s\"",
            unit,
            lowest,
            highest,
            example,
            text));
  }

  /** Rise over run. */
  static final class Grade extends BoundedNumber {
    Grade() {
      super("per cent", -30, 30, "6");
    }
  }

  /** Road or roller speed. */
  static final class Speed extends BoundedNumber {
    Speed() {
      super("km/h", 5, 200, "90");
    }
  }

  /** At the wheels. */
  static final class Power extends BoundedNumber {
    Power() {
      super("kW", 1, 2000, "150");
    }
  }

  /** Of all driven wheels together. */
  static final class Torque extends BoundedNumber {
    Torque() {
      super("N.m", 10, 100_000, "3200");
    }
  }

  /** Outside air. */
  static final class Ambient extends BoundedNumber {
    Ambient() {
      super("degC", -50, 60, "38");
    }
  }

  /** What a channel is not to exceed. */
  static final class Limit extends BoundedNumber {
    Limit() {
      super("degC", -40, 1200, "105");
    }
  }

  /** Of the road above the sea. */
  static final class Altitude extends BoundedNumber {
    Altitude() {
      super("m", -400, 5500, "1200");
    }
  }
}
