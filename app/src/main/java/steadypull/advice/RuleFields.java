package steadypull.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Typed access to the keys of a rule file; what does not fit is noted as a fault. */
final class RuleFields {
  private final List<RuleFault> faults = new ArrayList<>();

  /** The faults noted so far, in the file's order. */
  List<RuleFault> faults() {
    return faults.stream()
        .sorted(Comparator.comparingInt(RuleFault::line).thenComparingInt(RuleFault::column))
        .toList();
  }

  int faultCount() {
    return faults.size();
  }

  /** Text that is not blank, or empty with a fault. */
  String text(TomlTable table, String key, TomlPosition start) {
    if (!has(table, key, start)) {
      return "";
    }
    if (table.get(List.of(key)) instanceof String text && !text.isBlank()) {
      return text;
    }
    fault(table, key, "expected text in quotes, found %s".formatted(table.get(List.of(key))));
    return "";
  }

  /** A number within a range, or its lowest value if the key is absent or, with a fault, wrong. */
  double number(TomlTable table, String key, double lowest, double highest) {
    if (!table.contains(List.of(key))) {
      return lowest;
    }
    Object found = table.get(List.of(key));
    if (found instanceof Number number
        && number.doubleValue() >= lowest
        && number.doubleValue() <= highest) {
      return number.doubleValue();
    }
    fault(
        table, key, "expected a number from %s to %s, found %s".formatted(lowest, highest, found));
    return lowest;
  }

  /** Whether a key that every rule needs is there; notes a fault if not. */
  boolean has(TomlTable table, String key, TomlPosition start) {
    boolean isThere = table.contains(List.of(key));
    if (!isThere) {
      fault(start, "this rule lacks \"%s\"".formatted(key));
    }
    return isThere;
  }

  static TomlPosition position(TomlTable table, String key) {
    TomlPosition position = table.inputPositionOf(List.of(key));
    return position != null ? position : TomlPosition.positionAt(1, 1);
  }

  void fault(TomlTable table, String key, String message) {
    fault(position(table, key), message);
  }

  void fault(TomlPosition position, String message) {
    fault(new RuleFault(position.line(), position.column(), message));
  }

  void fault(RuleFault fault) {
    faults.add(fault);
  }
}
