package steadypull.drive;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import steadypull.vehicle.TroubleCodes;

/**
 * What the control units told about faults and about themselves, as far as it is known at one
 * moment. Immutable.
 *
 * @param codes their trouble codes
 * @param frames what was measured when codes were stored, by control unit
 * @param controlUnits who they are, by address
 */
public record Diagnosis(TroubleCodes codes, List<Frame> frames, List<ControlUnit> controlUnits) {
  public Diagnosis {
    Objects.requireNonNull(codes);
    frames = List.copyOf(frames);
    controlUnits = List.copyOf(controlUnits);
  }

  /** Nothing was told. */
  public static Diagnosis none() {
    return new Diagnosis(TroubleCodes.unknown(), List.of(), List.of());
  }

  /**
   * What one control unit measured when it stored a code.
   *
   * @param controlUnit its address
   * @param code the code, such as {@code P0299}
   * @param values in the order of the parameter table
   */
  public record Frame(String controlUnit, String code, List<Value> values) {
    public Frame {
      Objects.requireNonNull(controlUnit);
      Objects.requireNonNull(code);
      values = List.copyOf(values);
    }
  }

  /**
   * One value of a frame.
   *
   * @param name the standard's name
   * @param value in the unit
   * @param unit {@code 1} for numbers without one
   * @param words what a counted value means; empty for quantities
   */
  public record Value(String name, double value, String unit, Optional<String> words) {
    public Value {
      Objects.requireNonNull(name);
      Objects.requireNonNull(unit);
      Objects.requireNonNull(words);
    }
  }

  /**
   * Who a control unit is.
   *
   * @param address as printed in the message header
   * @param name what it calls itself; may be empty
   * @param calibrations which software and data it works with; may be empty
   */
  public record ControlUnit(String address, String name, List<String> calibrations) {
    public ControlUnit {
      Objects.requireNonNull(address);
      Objects.requireNonNull(name);
      calibrations = List.copyOf(calibrations);
    }
  }
}
